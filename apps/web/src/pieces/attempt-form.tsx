import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { FormSheet } from './form-sheet.js';
import { type Named, NamedSelect } from './line-form.js';
import { type DistanceUnit, OdometerField } from './odometer-fields.js';
import { said, wholeOf } from './typed.js';

type AttemptFormProps = {
  readonly jobId: string;
  /** Those of the visit; with one, or where `concernId` names one, it is not asked. */
  readonly concerns: readonly { readonly id: string; readonly words: string; readonly conditions: string | null }[];
  readonly concernId?: string;
  /** Road tests of the visit that it may have been made on, newest first; an open one is taken at once. */
  readonly roadTests?: readonly (Named & { readonly isOut?: boolean })[];
  readonly unit: DistanceUnit;
  readonly last?: { readonly value: number; readonly unit: DistanceUnit } | null;
  readonly onClose: () => void;
};

/** The road test that the vehicle is out on. */
const outNow = (roadTests: NonNullable<AttemptFormProps['roadTests']>): string | null =>
  roadTests.find((one) => one.isOut === true)?.id ?? null;

type WhichProps = {
  readonly concerns: AttemptFormProps['concerns'];
  readonly isAsked: boolean;
  readonly concernId: string | null;
  readonly onChange: (concernId: string) => void;
};

const WhichConcern = ({ concerns, isAsked, concernId, onChange }: WhichProps): ReactElement => {
  const { t } = useText();
  if (!isAsked) return <p className="hf-entry-title">{concerns.find((one) => one.id === concernId)?.words}</p>;
  return (
    <Select
      label={t('piece.attempt.concern')}
      value={concernId}
      onChange={onChange}
      options={concerns.map((one) => ({ value: one.id, label: one.words }))}
    />
  );
};

/** One try to make a concern appear: under which conditions, and whether it did. */
export const AttemptForm = (props: AttemptFormProps): ReactElement => {
  const { jobId, concerns, roadTests = [], onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const only = concerns.length === 1 ? concerns[0]?.id : undefined;
  const [concernId, setConcernId] = useState(props.concernId ?? only);
  const concern = concerns.find((one) => one.id === concernId);
  const [typed, setTyped] = useState<string | null>(null);
  const conditions = typed ?? concern?.conditions ?? '';
  const [appeared, setAppeared] = useState<'yes' | 'no' | null>(null);
  const [placeId, setPlaceId] = useState(() => outNow(roadTests));
  const [odometer, setOdometer] = useState('');
  const [unit, setUnit] = useState(props.unit);
  const [words, setWords] = useState('');
  const reading = wholeOf(odometer);
  const isWhole = concernId !== undefined && appeared !== null && said(conditions) !== undefined && reading !== null;
  const send = async (): Promise<void> => {
    if (concernId === undefined || appeared === null) return;
    const what = { attemptId: newId(), concernId, conditions: conditions.trim(), appeared: appeared === 'yes' };
    const where = { placeId: placeId ?? undefined, words: said(words) };
    const read = typeof reading === 'number' ? { odometer: reading, odometerUnit: unit } : {};
    const done = { text: 'piece.done.attempt', values: { appeared } } as const;
    if (await sending.run('recordAttempt', { ...what, ...where, ...read }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.attempt.heading')}
      command="recordAttempt"
      act={t('piece.attempt.act')}
      sending={sending}
      ready={isWhole}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <WhichConcern
        concerns={concerns}
        isAsked={props.concernId === undefined && concerns.length > 1}
        concernId={concernId ?? null}
        onChange={setConcernId}
      />
      <TextArea
        label={t('piece.attempt.conditions')}
        hint={t('piece.attempt.conditionsHint')}
        value={conditions}
        onChange={setTyped}
        rows={2}
        isRequired
      />
      <Choice
        label={t('piece.attempt.appeared')}
        size="large"
        value={appeared}
        onChange={setAppeared}
        options={[
          { value: 'yes', label: t('piece.attempt.yes') },
          { value: 'no', label: t('piece.attempt.no') },
        ]}
      />
      <NamedSelect label={t('piece.attempt.roadTest')} rows={roadTests} value={placeId} onChange={setPlaceId} />
      <OdometerField
        label={t('piece.odometer.value')}
        value={odometer}
        onChange={setOdometer}
        unit={unit}
        onUnit={setUnit}
        last={props.last ?? null}
      />
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
