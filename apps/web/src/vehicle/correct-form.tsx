import type { VehicleView } from '@holdfast/contract';
import { drives, massSources, vehicleKinds } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSignedIn } from '../live/session.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { NumberField } from '../pieces/number-field.js';
import { optionsOf } from '../pieces/options.js';
import { said, wholeOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';

type Vehicle = VehicleView['vehicle'];
type Source = (typeof massSources)[number];
type Draft = {
  readonly plate: string;
  readonly vin: string;
  readonly description: string;
  readonly kind: (typeof vehicleKinds)[number];
  readonly drive: (typeof drives)[number];
  readonly notes: string;
  readonly curbKg: string;
  readonly curbSource: Source | null;
  readonly grossKg: string;
  readonly grossSource: Source | null;
  readonly weighedKg: string;
};

const typed = (kg: number | null): string => (kg === null ? '' : String(kg));
const draftOf = (vehicle: Vehicle): Draft => ({
  plate: vehicle.plate,
  vin: vehicle.vin ?? '',
  description: vehicle.description,
  kind: vehicle.kind,
  drive: vehicle.drive,
  notes: vehicle.notes ?? '',
  curbKg: typed(vehicle.curbKg),
  curbSource: vehicle.curbSource,
  grossKg: typed(vehicle.grossKg),
  grossSource: vehicle.grossSource,
  weighedKg: typed(vehicle.weighedKg),
});

/** What the draft says otherwise than the vehicle; a mass goes with its source. */
const changesOf = (vehicle: Vehicle, draft: Draft) => {
  const first = draftOf(vehicle);
  const moved = <V,>(key: keyof Draft, value: V): V | undefined => (draft[key] === first[key] ? undefined : value);
  const curb = moved('curbKg', true) ?? moved('curbSource', true);
  const gross = moved('grossKg', true) ?? moved('grossSource', true);
  return {
    plate: moved('plate', draft.plate.trim()),
    vin: moved('vin', said(draft.vin) ?? null),
    description: moved('description', draft.description.trim()),
    kind: moved('kind', draft.kind),
    drive: moved('drive', draft.drive),
    notes: moved('notes', said(draft.notes) ?? null),
    curbKg: curb && (wholeOf(draft.curbKg) ?? undefined),
    curbSource: curb && (draft.curbSource ?? undefined),
    grossKg: gross && (wholeOf(draft.grossKg) ?? undefined),
    grossSource: gross && (draft.grossSource ?? undefined),
    weighedKg: moved('weighedKg', wholeOf(draft.weighedKg) ?? undefined),
  };
};

const masses = ['curbKg', 'grossKg', 'weighedKg'] as const;
const isRight = (draft: Draft, changes: ReturnType<typeof changesOf>): boolean =>
  said(draft.plate) !== undefined &&
  said(draft.description) !== undefined &&
  masses.every((key) => wholeOf(draft[key]) !== null) &&
  (changes.curbKg === undefined || draft.curbSource !== null) &&
  (changes.grossKg === undefined || draft.grossSource !== null);

type FieldsProps = { readonly draft: Draft; readonly change: (part: Partial<Draft>) => void };

const MassFields = ({ draft, change }: FieldsProps): ReactElement => {
  const { t } = useText();
  const kilograms = (key: (typeof masses)[number], label: string): ReactElement => (
    <NumberField
      label={label}
      value={draft[key]}
      onChange={(value) => {
        change({ [key]: value });
      }}
      unit="kg"
      units={[{ value: 'kg', label: 'kg' }]}
      wrong={wholeOf(draft[key]) === null ? t('piece.wrong.whole') : null}
    />
  );
  const source = (key: 'curbSource' | 'grossSource', label: string): ReactElement => (
    <Select
      label={label}
      value={draft[key]}
      onChange={(value) => {
        change({ [key]: value });
      }}
      options={optionsOf(massSources, (one) => t(`word.mass.${one}`))}
    />
  );
  return (
    <fieldset className="hf-group">
      <legend>{t('vehicle.masses')}</legend>
      {kilograms('curbKg', t('vehicle.curbIn'))}
      {source('curbSource', t('vehicle.curbSource'))}
      {kilograms('grossKg', t('vehicle.grossIn'))}
      {source('grossSource', t('vehicle.grossSource'))}
      {kilograms('weighedKg', t('vehicle.weighedIn'))}
      <p className="hf-quiet hf-small">{t('vehicle.massWhy')}</p>
    </fieldset>
  );
};

const PlainFields = ({ draft, change }: FieldsProps): ReactElement => {
  const { t } = useText();
  return (
    <>
      <Field
        label={t('vehicle.plate')}
        value={draft.plate}
        onChange={(plate) => {
          change({ plate });
        }}
        code
        isRequired
      />
      <Field
        label={t('vehicle.vin')}
        value={draft.vin}
        onChange={(vin) => {
          change({ vin });
        }}
        code
      />
      <Field
        label={t('vehicle.description')}
        value={draft.description}
        onChange={(description) => {
          change({ description });
        }}
        isRequired
      />
      <Choice
        label={t('vehicle.kind')}
        value={draft.kind}
        onChange={(kind) => {
          change({ kind });
        }}
        options={optionsOf(vehicleKinds, (one) => t(`word.vehicle.${one}`))}
      />
      <Choice
        label={t('vehicle.drive')}
        value={draft.drive}
        onChange={(drive) => {
          change({ drive });
        }}
        options={optionsOf(drives, (one) => t(`word.drive.${one}`))}
      />
      <TextArea
        label={t('vehicle.notes')}
        value={draft.notes}
        onChange={(notes) => {
          change({ notes });
        }}
        rows={2}
      />
    </>
  );
};

type CorrectProps = { readonly vehicle: Vehicle; readonly onClose: () => void };

/** What was wrong or unknown about a vehicle; both values are kept. Masses by owner or manager, with their source. */
export const CorrectForm = ({ vehicle, onClose }: CorrectProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const { person } = useSignedIn();
  const leads = person.roles.includes('owner') || person.roles.includes('manager');
  const [draft, setDraft] = useState(() => draftOf(vehicle));
  const [words, setWords] = useState('');
  const change = (part: Partial<Draft>): void => {
    setDraft((before) => ({ ...before, ...part }));
  };
  const changes = changesOf(vehicle, draft);
  const isNew = Object.values(changes).some((value) => value !== undefined);
  const send = async (): Promise<void> => {
    const input = { vehicleId: vehicle.id, version: vehicle.version, ...changes, words: said(words) };
    if (await sending.run('correctVehicle', input, { text: 'vehicle.done.correct', values: { plate: draft.plate } }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('vehicle.correct.heading', { plate: vehicle.plate })}
      command="correctVehicle"
      act={t('vehicle.keepIt')}
      sending={sending}
      ready={isRight(draft, changes) && isNew}
      onSend={() => void send()}
      onClose={onClose}
    >
      <PlainFields draft={draft} change={change} />
      {leads ? (
        <MassFields draft={draft} change={change} />
      ) : (
        <p className="hf-quiet hf-small">{t('vehicle.massByLead')}</p>
      )}
      <TextArea label={t('vehicle.correct.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
