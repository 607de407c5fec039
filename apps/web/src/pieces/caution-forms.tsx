import { cautionCodes, type CautionCode } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useBoard } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { CautionForbids } from './caution-forbids.js';
import { FormSheet } from './form-sheet.js';
import { type Named, NamedSelect } from './line-form.js';
import { optionsOf } from './options.js';
import { said } from './typed.js';
import { cautionWords } from './vehicle-head.js';

type CautionFormProps = {
  readonly vehicleId: string;
  /** The visit a working caution belongs to; null when the vehicle is not here, and every caution is a standing one. */
  readonly jobId: string | null;
  /** A few to choose from, in sight, where it is a tag or a state; else all of them, in a list. */
  readonly only?: { readonly codes: readonly CautionCode[]; readonly heading: string; readonly label: string };
  readonly onClose: () => void;
};

/** What is usual with a state of the high-voltage system; the rest is the vehicle maker's and the place's. */
const careOf: Readonly<Partial<Record<CautionCode, 'tag.isDead' | 'tag.isLive'>>> = {
  highVoltageDead: 'tag.isDead',
  highVoltageLive: 'tag.isLive',
};

/** Codes that stay with the vehicle unless somebody says otherwise. */
const usuallyStanding: readonly CautionCode[] = ['liftingPoint', 'electricDrive', 'gasTank'];

/** What the caution will forbid, and the usual care where it is of high voltage. */
const Consequences = ({ code }: { readonly code: CautionCode }): ReactElement => {
  const { t } = useText();
  const care = careOf[code];
  return (
    <div className="hf-care">
      <CautionForbids code={code} />
      {care !== undefined && <p className="hf-small">{t(care)}</p>}
    </div>
  );
};

/** A caution on a vehicle: for this visit, or standing. A tag is one of them. */
export const CautionForm = ({ vehicleId, jobId, only, onClose }: CautionFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const people = [...useBoard().tables.person.values()].filter((person) => person.active);
  const [code, setCode] = useState<CautionCode | null>(null);
  const [chosen, setChosen] = useState<'working' | 'standing' | null>(jobId === null ? 'standing' : null);
  const [words, setWords] = useState('');
  const [secondId, setSecondId] = useState<string | null>(null);
  const lasts = chosen ?? (code !== null && usuallyStanding.includes(code) ? 'standing' : 'working');
  const standing = lasts === 'standing';
  const send = async (): Promise<void> => {
    if (code === null) return;
    const visit = { jobId: jobId ?? undefined, secondId: standing ? undefined : (secondId ?? undefined) };
    const input = { cautionId: newId(), vehicleId, ...visit, standing, code, words: said(words) };
    const values = { caution: cautionWords({ code, words: said(words) ?? null }, t) };
    if (await sending.run('addCaution', input, { text: 'piece.done.caution', values })) onClose();
  };
  return (
    <FormSheet
      heading={only?.heading ?? t('piece.caution.heading')}
      command="addCaution"
      act={t('piece.caution.act')}
      sending={sending}
      ready={code !== null}
      {...(jobId === null ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      {only === undefined ? (
        <Select
          label={t('piece.caution.code')}
          value={code}
          onChange={setCode}
          options={optionsOf(cautionCodes, (value) => t(`word.caution.${value}`))}
          isRequired
        />
      ) : (
        <Choice
          label={only.label}
          size="large"
          value={code}
          onChange={setCode}
          options={optionsOf(only.codes, (value) => t(`word.caution.${value}`))}
        />
      )}
      {code !== null && <Consequences code={code} />}
      <TextArea label={t('piece.caution.words')} value={words} onChange={setWords} rows={2} />
      <Choice
        label={t('piece.caution.lasts')}
        value={lasts}
        onChange={setChosen}
        options={(['working', 'standing'] as const).map((value) => ({
          value,
          label: t(`piece.caution.${value}`),
          isDisabled: value === 'working' && jobId === null,
        }))}
      />
      {!standing && (
        <NamedSelect
          label={t('piece.caution.second')}
          rows={people.map((person) => ({ id: person.id, title: person.name }))}
          value={secondId}
          onChange={setSecondId}
        />
      )}
    </FormSheet>
  );
};

type EndCautionProps = {
  readonly caution: {
    readonly id: string;
    readonly version: number;
    readonly code: CautionCode;
    readonly words: string | null;
    readonly standing: boolean;
  };
  /** Done lines of this vehicle: one of them may have mended it. */
  readonly doneLines: readonly Named[];
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** A caution no longer applies: with words, or with the line that mended it. */
export const EndCautionForm = ({ caution, doneLines, jobId, onClose }: EndCautionProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const [lineId, setLineId] = useState<string | null>(null);
  const values = { caution: cautionWords(caution, t) };
  const send = async (): Promise<void> => {
    const input = { cautionId: caution.id, version: caution.version, words: said(words), lineId: lineId ?? undefined };
    if (await sending.run('endCaution', input, { text: 'piece.done.endCaution', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.endCaution.heading', values)}
      command="endCaution"
      act={t('piece.endCaution.act')}
      sending={sending}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{caution.standing ? t('piece.endCaution.standing') : t('piece.endCaution.working')}</p>
      {caution.standing && (
        <NamedSelect label={t('piece.endCaution.line')} rows={doneLines} value={lineId} onChange={setLineId} />
      )}
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
