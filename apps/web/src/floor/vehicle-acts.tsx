import type { Visit } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import type { PickedState } from './picked.js';

type ActsProps = { readonly visit: Visit; readonly picked: PickedState; readonly ask?: () => void };

/** Pick it, or say why it stands; nothing while another one is picked. */
export const VehicleActs = ({ visit, picked, ask }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const { plate } = visit.vehicle;
  if (picked.visit !== undefined) return null;
  return (
    <>
      {may.command('takeIntoBay') && (
        <Button
          size="small"
          label={t('floor.pickNamed', { plate })}
          onPress={() => {
            picked.pick(visit.job.id);
          }}
        >
          {t('floor.pick')}
        </Button>
      )}
      {ask !== undefined && (
        <Button size="small" label={t('floor.sayWhyNamed', { plate })} onPress={ask}>
          {t('floor.sayWhy')}
        </Button>
      )}
    </>
  );
};
