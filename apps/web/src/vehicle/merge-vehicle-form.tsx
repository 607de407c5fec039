import type { VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useRead } from '../live/reads.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { nameWords } from '../pieces/customer-name.js';
import { said } from '../pieces/typed.js';
import { useText, type Text } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { differing, moving, type Compared } from './compared.js';
import { FindRecord } from './find-record.js';
import { SideBySide } from './side-by-side.js';

const factsOf = ({ vehicle, customer }: VehicleView, { t }: Text) => {
  const kg = (value: number | null): string | null => (value === null ? null : t('vehicle.mass', { kg: value }));
  return {
    plate: vehicle.plate,
    vin: vehicle.vin,
    description: vehicle.description,
    kind: t(`word.vehicle.${vehicle.kind}`),
    drive: t(`word.drive.${vehicle.drive}`),
    curbKg: kg(vehicle.curbKg),
    grossKg: kg(vehicle.grossKg),
    weighedKg: kg(vehicle.weighedKg),
    notes: vehicle.notes,
    customer: customer === null ? null : nameWords(customer.name, t),
  } as const;
};

const countsOf = (view: VehicleView) =>
  ({
    jobs: view.jobs.length,
    cautions: view.cautions.filter((one) => one.endedAt === null).length,
    fixes: view.temporaryFixes.filter((one) => one.state !== 'ended').length,
    followUps: view.followUps.filter((one) => one.state === 'open').length,
    findings: view.findings.length,
    readings: view.odometerReadings.length,
    photos: view.photos.length,
  }) as const;

const keysOf = <O extends object>(of: O): (keyof O & string)[] => Object.keys(of) as (keyof O & string)[];

const comparedOf = (kept: VehicleView, other: VehicleView, text: Text): (Compared & { readonly label: string })[] => {
  const { t, format } = text;
  const [ours, theirs] = [factsOf(kept, text), factsOf(other, text)];
  const [have, bring] = [countsOf(kept), countsOf(other)];
  return [
    ...differing(
      keysOf(ours).map((name) => ({ name, kept: ours[name], other: theirs[name] })),
      t('vehicle.unknown'),
    ).map((line) => ({
      ...line,
      label: line.name === 'customer' ? t('vehicle.customer') : t(`vehicle.field.${line.name}`),
    })),
    ...moving(
      keysOf(have).map((name) => ({ name, kept: have[name], other: bring[name] })),
      format.number,
    ).map((line) => ({ ...line, label: t(`records.count.${line.name}`) })),
  ];
};

type MergeProps = { readonly view: VehicleView; readonly onClose: () => void };

/** Two records of one vehicle become this one: the other is looked for, compared, and merged with words. */
export const MergeVehicleForm = ({ view, onClose }: MergeProps): ReactElement => {
  const text = useText();
  const { t } = text;
  const sending = useSend();
  const [chosen, setChosen] = useState<{ id: string; title: string; under: string } | null>(null);
  const [words, setWords] = useState('');
  const read = useRead<VehicleView>(
    chosen === null ? null : `/api/vehicles/${chosen.id}`,
    chosen === null ? [] : [`vehicle:${chosen.id}`],
  );
  const other = chosen !== null && read.data?.vehicle.id === chosen.id ? read.data : undefined;
  const { plate } = view.vehicle;
  const send = async (): Promise<void> => {
    if (other === undefined) return;
    const { id: vehicleId, version } = view.vehicle;
    const { id: otherId, version: otherVersion } = other.vehicle;
    if (await sending.run('mergeVehicles', { vehicleId, version, otherId, otherVersion, words: words.trim() }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('records.mergeVehicle.heading', { plate })}
      command="mergeVehicles"
      act={t('records.merge.act')}
      sending={sending}
      ready={other !== undefined && said(words) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('records.mergeVehicle.words', { plate })}</p>
      <FindRecord
        kind="vehicle"
        label={t('records.mergeVehicle.other')}
        except={view.vehicle.id}
        chosen={chosen}
        onChosen={setChosen}
      />
      {other !== undefined && (
        <>
          <SideBySide
            caption={t('records.differs')}
            kept={plate}
            other={other.vehicle.plate}
            lines={comparedOf(view, other, text)}
          />
          <TextArea label={t('records.merge.why')} value={words} onChange={setWords} rows={2} isRequired />
        </>
      )}
    </FormSheet>
  );
};
