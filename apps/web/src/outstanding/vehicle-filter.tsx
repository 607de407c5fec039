import type { FindView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useRead } from '../live/reads.js';
import { useBoard } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';

export type ChosenVehicle = { readonly id: string; readonly plate: string };

type FilterProps = {
  readonly chosen: ChosenVehicle | null;
  readonly onChange: (vehicle: ChosenVehicle | null) => void;
};

const leastLetters = 2;
const mostOffered = 6;

/** Finds a vehicle by its plate, key or job number; also one that has left. */
const useFoundVehicles = (typed: string): ChosenVehicle[] => {
  const { tables } = useBoard();
  const asked = typed.trim();
  const found = useRead<FindView>(asked.length < leastLetters ? null : `/api/find?q=${encodeURIComponent(asked)}`, []);
  if (asked.length < leastLetters) return [];
  const vehicles = (found.data?.items ?? []).flatMap((item) => {
    if (item.kind === 'vehicle') return [{ id: item.id, plate: item.plate }];
    const vehicleId = item.kind === 'job' ? tables.job.get(item.id)?.vehicleId : undefined;
    return vehicleId === undefined || item.kind !== 'job' ? [] : [{ id: vehicleId, plate: item.plate }];
  });
  return [...new Map(vehicles.map((vehicle) => [vehicle.id, vehicle])).values()].slice(0, mostOffered);
};

/** All vehicles, or one. */
export const VehicleFilter = ({ chosen, onChange }: FilterProps): ReactElement => {
  const { t } = useText();
  const [typed, setTyped] = useState('');
  const found = useFoundVehicles(typed);
  if (chosen) {
    return (
      <div className="hf-outstanding-filter">
        <p>{t('outstanding.only', { plate: chosen.plate })}</p>
        <Button
          size="small"
          onPress={() => {
            onChange(null);
          }}
        >
          {t('outstanding.allVehicles')}
        </Button>
      </div>
    );
  }
  return (
    <div className="hf-outstanding-filter">
      <Field label={t('outstanding.find')} value={typed} onChange={setTyped} type="search" code />
      <div className="hf-row" role="group" aria-label={t('outstanding.found')}>
        {found.map((vehicle) => (
          <Button
            key={vehicle.id}
            onPress={() => {
              setTyped('');
              onChange(vehicle);
            }}
          >
            {vehicle.plate}
          </Button>
        ))}
      </div>
    </div>
  );
};
