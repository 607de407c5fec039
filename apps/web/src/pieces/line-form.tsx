import { equipmentKinds, payers, skills } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { FormSheet } from './form-sheet.js';
import { NumberField } from './number-field.js';
import { optionsOf } from './options.js';
import { decimalOf, minutesOf, said } from './typed.js';

/** Something that a select offers: a line, a concern, a finding. */
export type Named = { readonly id: string; readonly title: string };

type LineFormProps = {
  readonly jobId: string;
  readonly lines: readonly Named[];
  readonly concerns: readonly Named[];
  readonly findings?: readonly Named[];
  /** Open follow-ups of the vehicle that a line could take up. */
  readonly followUps?: readonly Named[];
  readonly onClose: () => void;
};

const none = 'none';
type NamedSelectProps = {
  readonly label: string;
  readonly rows: readonly Named[];
  readonly value: string | null;
  readonly onChange: (id: string | null) => void;
};

/** A row by its title, or none. */
export const NamedSelect = ({ label, rows, value, onChange }: NamedSelectProps): ReactElement | null => {
  const { t } = useText();
  if (rows.length === 0) return null;
  return (
    <Select
      label={label}
      value={value ?? none}
      onChange={(id) => {
        onChange(id === none ? null : id);
      }}
      options={[{ value: none, label: t('piece.none') }, ...rows.map((row) => ({ value: row.id, label: row.title }))]}
    />
  );
};

/** One more piece of work on a job. Its go-ahead is asked for afterwards. */
export const LineForm = (props: LineFormProps): ReactElement => {
  const { jobId, onClose } = props;
  const { t } = useText();
  const { currency } = useShopSettings();
  const sending = useSend();
  const [title, setTitle] = useState('');
  const [book, setBook] = useState('');
  const [price, setPrice] = useState('');
  const [payer, setPayer] = useState<(typeof payers)[number]>('customer');
  const [equipment, setEquipment] = useState<(typeof equipmentKinds)[number] | typeof none>(none);
  const [skill, setSkill] = useState<(typeof skills)[number] | typeof none>(none);
  const [concernId, setConcernId] = useState<string | null>(props.concerns.length === 1 ? (props.concerns[0]?.id ?? null) : null);
  const [findingId, setFindingId] = useState<string | null>(null);
  const [afterLineId, setAfterLineId] = useState<string | null>(null);
  const [followUpId, setFollowUpId] = useState<string | null>(null);
  const amount = decimalOf(price);
  const minutes = minutesOf(book);
  const send = async (): Promise<void> => {
    const asked = {
      title: title.trim(),
      bookMinutes: minutes ?? undefined,
      price: amount ?? undefined,
      payer,
      equipment: equipment === none ? undefined : equipment,
      skill: skill === none ? undefined : skill,
    };
    const about = {
      concernId: concernId ?? undefined,
      findingId: findingId ?? undefined,
      afterLineId: afterLineId ?? undefined,
      fromFollowUpId: followUpId ?? undefined,
    };
    const done = { text: 'piece.done.line', values: { title: asked.title } } as const;
    if (await sending.run('addLine', { lineId: newId(), jobId, ...asked, ...about }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.line.heading')}
      command="addLine"
      act={t('piece.line.act')}
      sending={sending}
      ready={said(title) !== undefined && amount !== null && minutes !== null}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <NamedSelect
        label={t('piece.line.followUp')}
        rows={props.followUps ?? []}
        value={followUpId}
        onChange={(id) => {
          setFollowUpId(id);
          if (said(title) === undefined) setTitle(props.followUps?.find((one) => one.id === id)?.title ?? '');
        }}
      />
      <Field label={t('piece.line.title')} value={title} onChange={setTitle} isRequired />
      <div className="hf-pair">
        <Field
          label={t('piece.line.book')}
          value={book}
          onChange={setBook}
          hint={t('piece.hoursHint')}
          wrong={minutes === null ? t('piece.wrong.minutes') : null}
        />
        <NumberField
          label={t('piece.line.price', { currency })}
          value={price}
          onChange={setPrice}
          unit={currency}
          units={[{ value: currency, label: currency }]}
          places={2}
          wrong={amount === null ? t('piece.wrong.amount') : null}
        />
      </div>
      <NamedSelect label={t('piece.line.concern')} rows={props.concerns} value={concernId} onChange={setConcernId} />
      <NamedSelect label={t('piece.line.finding')} rows={props.findings ?? []} value={findingId} onChange={setFindingId} />
      <Choice
        label={t('piece.line.payer')}
        value={payer}
        onChange={setPayer}
        options={optionsOf(payers, (value) => t(`word.payer.${value}`))}
      />
      <div className="hf-pair">
        <Select
          label={t('piece.line.equipment')}
          value={equipment}
          onChange={setEquipment}
          options={optionsOf([none, ...equipmentKinds] as const, (one) => (one === none ? t('piece.none') : t(`word.equipment.${one}`)))}
        />
        <Select
          label={t('piece.line.skill')}
          value={skill}
          onChange={setSkill}
          options={optionsOf([none, ...skills] as const, (one) => (one === none ? t('piece.none') : t(`word.skill.${one}`)))}
        />
      </div>
      <NamedSelect label={t('piece.line.after')} rows={props.lines} value={afterLineId} onChange={setAfterLineId} />
    </FormSheet>
  );
};
