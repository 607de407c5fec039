import type { Visit } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import type { PickedState } from './picked.js';

type ActsProps = { readonly visit: Visit; readonly picked: PickedState };

/** Pick it; nothing while another one is picked. */
export const VehicleActs = ({ visit, picked }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const { plate } = visit.vehicle;
  if (picked.visit !== undefined || !may.command('takeIntoBay')) return null;
  return (
    <Button
      size="small"
      label={t('floor.pickNamed', { plate })}
      onPress={() => {
        picked.pick(visit.job.id);
      }}
    >
      {t('floor.pick')}
    </Button>
  );
};

/** Asks why a vehicle stands; the same as a tap on its dots. */
export const SayWhy = ({ plate, ask }: { readonly plate: string; readonly ask: () => void }): ReactElement => {
  const { t } = useText();
  return (
    <Button size="small" look="plain" label={t('floor.sayWhyNamed', { plate })} onPress={ask}>
      {t('floor.sayWhy')}
    </Button>
  );
};
