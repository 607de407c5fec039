import { findingKinds } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { type Named, NamedSelect } from './line-form.js';
import { NumberField } from './number-field.js';
import { optionsOf } from './options.js';
import { PhotoInput, usePhotos } from './photo-form.js';
import { decimalOf, said } from './typed.js';

type FindingFormProps = {
  readonly jobId: string;
  readonly concerns: readonly Named[];
  readonly onClose: () => void;
};

/** The units a place on a vehicle is measured in; what was read is kept in its unit, nothing is converted. */
const units = ['mm', 'in/32', 'bar', 'psi', 'kPa', 'V', 'N·m', 'lb·ft', '°C', '°F', '%'] as const;
type Unit = (typeof units)[number];

/** What was seen or measured at a place on the vehicle, with photos. */
export const FindingForm = ({ jobId, concerns, onClose }: FindingFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const photos = usePhotos(jobId);
  const [place, setPlace] = useState('');
  const [kind, setKind] = useState<(typeof findingKinds)[number]>('fault');
  const [words, setWords] = useState('');
  const [measure, setMeasure] = useState('');
  const [unit, setUnit] = useState<Unit>('mm');
  const [concernId, setConcernId] = useState<string | null>(null);
  const measured = decimalOf(measure);
  const send = async (): Promise<void> => {
    const findingId = newId();
    const what = { place: place.trim(), kind, words: said(words), concernId: concernId ?? undefined };
    const number = typeof measured === 'string' ? { measure: measured, unit } : {};
    const done = { text: 'piece.done.finding', values: { place: what.place } } as const;
    if (!(await sending.run('addFinding', { findingId, jobId, ...what, ...number }, done))) return;
    if (await photos.attach({ findingId })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.finding.heading')}
      command="addFinding"
      act={t('piece.finding.act')}
      sending={sending.problem === null ? { ...sending, problem: photos.problem } : sending}
      ready={said(place) !== undefined && measured !== null}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field
        label={t('piece.finding.place')}
        hint={t('piece.finding.placeHint')}
        value={place}
        onChange={setPlace}
        isRequired
      />
      <Choice
        label={t('piece.finding.kind')}
        value={kind}
        onChange={setKind}
        options={optionsOf(findingKinds, (value) => t(`word.finding.${value}`))}
      />
      <TextArea label={t('piece.finding.words')} value={words} onChange={setWords} rows={2} />
      <NumberField
        label={t('piece.finding.measure')}
        value={measure}
        onChange={setMeasure}
        unit={unit}
        units={units.map((value) => ({ value, label: value }))}
        onUnit={setUnit}
        places={3}
        hint={t('piece.finding.unitIs', { unit })}
        wrong={measured === null ? t('piece.wrong.amount') : null}
      />
      <NamedSelect label={t('piece.finding.concern')} rows={concerns} value={concernId} onChange={setConcernId} />
      <PhotoInput photos={photos} />
    </FormSheet>
  );
};
