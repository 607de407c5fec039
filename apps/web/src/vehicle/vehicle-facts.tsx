import { isTextKey, type VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Dated, Part } from '../pieces/part.js';
import { PhotoList } from '../pieces/photo-form.js';
import { useText } from '../text/use-text.js';
import { CorrectForm } from './correct-form.js';
import { MergeVehicleForm } from './merge-vehicle-form.js';

type Props = { readonly view: VehicleView };

/** What was corrected: both values, where the new one comes from, who said so. */
const Corrections = ({ view }: Props): ReactElement | null => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  if (view.corrections.length === 0) return null;
  const valueWords = (field: string, value: string | null): string => {
    if (value === null) return t('vehicle.unknown');
    const lists = { kind: 'vehicle', drive: 'drive', curbSource: 'mass', grossSource: 'mass' } as const;
    const list = Object.entries(lists).find(([name]) => name === field)?.[1];
    const key = `word.${list ?? ''}.${value}`;
    return isTextKey(key) ? t(key) : value;
  };
  const fieldWords = (field: string): string => {
    const key = `vehicle.field.${field}`;
    return isTextKey(key) ? t(key) : field;
  };
  const sourceWords = (source: string | null): string => {
    const key = `word.mass.${source ?? ''}`;
    return source === null ? 'empty' : isTextKey(key) ? t(key) : source;
  };
  return (
    <div>
      <h3>{t('vehicle.corrections')}</h3>
      <Dated
        lines={view.corrections.map((one) => ({
          when: format.moment(Date.parse(one.effectiveAt), now),
          what: t('vehicle.correction', {
            field: fieldWords(one.field),
            before: valueWords(one.field, one.before),
            after: valueWords(one.field, one.after),
            source: sourceWords(one.source),
            words: one.words ?? 'empty',
            name: people.get(one.byId ?? '')?.name ?? 'empty',
          }),
        }))}
      />
    </div>
  );
};

/** What the vehicle is, with the source of each mass, and what of it was corrected. */
export const VehicleFacts = ({ view }: Props): ReactElement => {
  const { t } = useText();
  const { vehicle, photos } = view;
  const mass = (kg: number | null, source: typeof vehicle.curbSource): string => {
    if (kg === null) return t('vehicle.unknown');
    return source === null
      ? t('vehicle.mass', { kg })
      : t('vehicle.massFrom', { kg, source: t(`word.mass.${source}`) });
  };
  const facts: readonly (readonly [string, string])[] = [
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
      <Part
        heading={t('vehicle.facts')}
        acts={
          <>
            <Opener command="correctVehicle" label={t('vehicle.correct')}>
              {(close) => <CorrectForm vehicle={vehicle} onClose={close} />}
            </Opener>
            <Opener command="mergeVehicles" label={t('records.mergeVehicle.open')} look="plain" about={vehicle.plate}>
              {(close) => <MergeVehicleForm view={view} onClose={close} />}
            </Opener>
          </>
        }
      >
        <dl className="hf-vehicle-facts">
          {facts.map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        <Corrections view={view} />
      </Part>
      {photos.length > 0 && (
        <Part heading={t('vehicle.photos')}>
          <PhotoList photos={photos} />
        </Part>
      )}
    </>
  );
};
