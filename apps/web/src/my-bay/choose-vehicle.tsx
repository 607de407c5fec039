import type { Board } from '@holdfast/board';
import type { ReactElement } from 'react';

import { VehicleHead } from '../pieces/vehicle-head.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { Button } from '../ui/button.js';
import { candidates } from './my-vehicle.js';

type ChooseProps = { readonly board: Board; readonly now: number; readonly onChoose: (jobId: string) => void };

/** All vehicles that are here, those in bays first: a tap takes one to the screen. */
export const ChooseVehicle = ({ board, now, onChoose }: ChooseProps): ReactElement => {
  const { t } = useText();
  const words = useVisitWords(board, now);
  const visits = candidates(board, now);
  if (visits.length === 0) {
    return <EmptyState heading={t('bay.nobodyHere')}>{t('bay.nobodyHereUnder')}</EmptyState>;
  }
  return (
    <ul className="hf-bay-choices">
      {visits.map((visit) => (
        <li key={visit.job.id} data-job={visit.job.number}>
          <Button
            label={[visit.vehicle.plate, visit.vehicle.description, words.place(visit), words.state(visit)].join(', ')}
            onPress={() => {
              onChoose(visit.job.id);
            }}
          >
            <VehicleHead
              plate={visit.vehicle.plate}
              description={visit.vehicle.description}
              cautions={visit.cautions}
              fixCount={visit.fixes.length}
              under={[words.place(visit), words.state(visit)].join(', ')}
            />
          </Button>
        </li>
      ))}
    </ul>
  );
};
