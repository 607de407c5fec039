import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { Part } from '../pieces/part.js';
import { PhotoList } from '../pieces/photo-form.js';
import { useText } from '../text/use-text.js';

/** What the vehicle is, with the source of each mass. */
export const VehicleFacts = ({ view }: { readonly view: VehicleView }): ReactElement => {
  const { t } = useText();
  const { vehicle, customer, photos } = view;
  const mass = (kg: number | null, source: typeof vehicle.curbSource): string => {
    if (kg === null) return t('vehicle.unknown');
    return source === null
      ? t('vehicle.mass', { kg })
      : t('vehicle.massFrom', { kg, source: t(`word.mass.${source}`) });
  };
  const facts: readonly (readonly [string, string])[] = [
    [t('vehicle.customer'), customer?.name ?? t('vehicle.nobody')],
    [
      t('vehicle.kind'),
      t('vehicle.kindIs', { kind: t(`word.vehicle.${vehicle.kind}`), drive: t(`word.drive.${vehicle.drive}`) }),
    ],
    [t('vehicle.vin'), vehicle.vin ?? t('vehicle.unknown')],
    [t('vehicle.curb'), mass(vehicle.curbKg, vehicle.curbSource)],
    [t('vehicle.gross'), mass(vehicle.grossKg, vehicle.grossSource)],
    [t('vehicle.weighed'), mass(vehicle.weighedKg, null)],
    ...(vehicle.notes === null ? [] : [[t('vehicle.notes'), vehicle.notes] as const]),
  ];
  return (
    <>
      <Part heading={t('vehicle.facts')}>
        <dl className="hf-vehicle-facts">
          {facts.map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      </Part>
      {photos.length > 0 && (
        <Part heading={t('vehicle.photos')}>
          <PhotoList photos={photos} />
        </Part>
      )}
    </>
  );
};
