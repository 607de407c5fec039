import { followUpKinds, urgencies } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { LimitsFields, useLimits } from './limits-fields.js';
import { type Named, NamedSelect } from './line-form.js';
import { optionsOf } from './options.js';
import { Tick, Ticks } from './ticks.js';
import { minutesOf, said } from './typed.js';

type Kind = (typeof followUpKinds)[number];

type FollowUpFormProps = {
  readonly vehicleId: string;
  readonly jobId?: string;
  /** What it is made for; goes with it. */
  readonly of?: { readonly temporaryFixId?: string; readonly lineId?: string };
  readonly first?: { readonly kind?: Kind; readonly title?: string; readonly urgency?: (typeof urgencies)[number] };
  /** Part lines that it may carry on; `first` ones are ticked. */
  readonly parts?: readonly Named[];
  readonly tickedParts?: readonly string[];
  readonly followUps?: readonly Named[];
  readonly onClose: () => void;
};

type WordsProps = { readonly kind: Kind; readonly words: string; readonly onChange: (words: string) => void };

/** For a re-torque the words say where its distance comes from. */
const FollowUpWords = ({ kind, words, onChange }: WordsProps): ReactElement => {
  const { t } = useText();
  const isRetorque = kind === 'retorque';
  return (
    <>
      <TextArea
        label={t(isRetorque ? 'piece.followUp.distanceSource' : 'piece.words')}
        value={words}
        onChange={onChange}
        rows={2}
      />
      {isRetorque && <p className="hf-quiet hf-small">{t('piece.followUp.retorque')}</p>}
    </>
  );
};

/** Something stays outstanding on a vehicle: what, what it needs first, before when. */
export const FollowUpForm = (props: FollowUpFormProps): ReactElement => {
  const { vehicleId, jobId, of, first, parts = [], followUps = [], onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const limits = useLimits();
  const [kind, setKind] = useState<Kind>(first?.kind ?? 'deferred');
  const [title, setTitle] = useState(first?.title ?? '');
  const [words, setWords] = useState('');
  const [urgency, setUrgency] = useState<(typeof urgencies)[number]>(first?.urgency ?? 'soon');
  const [partLineIds, setPartLineIds] = useState<readonly string[]>(props.tickedParts ?? []);
  const [hours, setHours] = useState('');
  const [needsGoAhead, setNeedsGoAhead] = useState(false);
  const [needsFollowUpId, setNeedsFollowUpId] = useState<string | null>(null);
  const remainingMinutes = minutesOf(hours);
  const send = async (): Promise<void> => {
    const what = { kind, title: title.trim(), words: said(words), urgency, ...of, jobId };
    const needs = {
      partLineIds: partLineIds.length === 0 ? undefined : [...partLineIds],
      remainingMinutes: remainingMinutes ?? undefined,
      needsGoAhead: needsGoAhead || undefined,
      needsFollowUpId: needsFollowUpId ?? undefined,
    };
    const input = { followUpId: newId(), vehicleId, ...what, ...needs, ...limits.input };
    if (await sending.run('addFollowUp', input, { text: 'piece.done.followUp', values: { title: what.title } }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('piece.followUp.heading')}
      command="addFollowUp"
      act={t('piece.followUp.act')}
      sending={sending}
      ready={said(title) !== undefined && remainingMinutes !== null}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.followUp.kind')}
        value={kind}
        onChange={setKind}
        options={optionsOf(followUpKinds, (value) => t(`word.followUp.${value}`))}
      />
      <Field label={t('piece.followUp.title')} value={title} onChange={setTitle} isRequired />
      <FollowUpWords kind={kind} words={words} onChange={setWords} />
      <Choice
        label={t('piece.urgency')}
        value={urgency}
        onChange={setUrgency}
        options={optionsOf(urgencies, (value) => t(`word.urgency.${value}`))}
      />
      <LimitsFields limits={limits} />
      <fieldset className="hf-group">
        <legend>{t('piece.followUp.needs')}</legend>
        {parts.length > 0 && (
          <Ticks label={t('piece.followUp.parts')} rows={parts} value={partLineIds} onChange={setPartLineIds} />
        )}
        <Tick label={t('piece.followUp.needsGoAhead')} value={needsGoAhead} onChange={setNeedsGoAhead} />
        <NamedSelect
          label={t('piece.followUp.needsFollowUp')}
          rows={followUps}
          value={needsFollowUpId}
          onChange={setNeedsFollowUpId}
        />
        <Field
          label={t('piece.followUp.hours')}
          value={hours}
          onChange={setHours}
          hint={t('piece.hoursHint')}
          wrong={remainingMinutes === null ? t('piece.wrong.minutes') : null}
        />
      </fieldset>
    </FormSheet>
  );
};

type CloseFollowUpProps = {
  readonly followUp: { readonly id: string; readonly version: number; readonly title: string };
  readonly doneLines?: readonly Named[];
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** A follow-up is done, or dropped with words; never while its temporary fix is still on. */
export const CloseFollowUpForm = (props: CloseFollowUpProps): ReactElement => {
  const { followUp, doneLines = [], jobId, onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const [how, setHow] = useState<'done' | 'dropped'>('done');
  const [lineId, setLineId] = useState<string | null>(null);
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const by = { lineId: how === 'done' ? (lineId ?? undefined) : undefined, words: said(words) };
    const input = { followUpId: followUp.id, version: followUp.version, how, ...by };
    const values = { title: followUp.title, how };
    if (await sending.run('closeFollowUp', input, { text: 'piece.done.closeFollowUp', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.closeFollowUp.heading', { title: followUp.title })}
      command="closeFollowUp"
      act={t('piece.closeFollowUp.act')}
      sending={sending}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.closeFollowUp.how')}
        value={how}
        onChange={setHow}
        options={(['done', 'dropped'] as const).map((value) => ({ value, label: t(`piece.closeFollowUp.${value}`) }))}
      />
      {how === 'done' && (
        <NamedSelect label={t('piece.closeFollowUp.line')} rows={doneLines} value={lineId} onChange={setLineId} />
      )}
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
