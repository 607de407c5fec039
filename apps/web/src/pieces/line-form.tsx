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
  readonly causes?: readonly Named[];
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

export type LineDraft = {
  readonly title: string;
  readonly book: string;
  readonly price: string;
  readonly payer: (typeof payers)[number];
  readonly equipment: (typeof equipmentKinds)[number] | typeof none;
  readonly skill: (typeof skills)[number] | typeof none;
  readonly concernId: string | null;
  readonly findingId: string | null;
  readonly causeId: string | null;
  readonly afterLineId: string | null;
  readonly followUpId: string | null;
};

const newDraft = (concerns: readonly Named[]): LineDraft => ({
  title: '',
  book: '',
  price: '',
  payer: 'customer',
  equipment: none,
  skill: none,
  concernId: concerns.length === 1 ? (concerns[0]?.id ?? null) : null,
  findingId: null,
  causeId: null,
  afterLineId: null,
  followUpId: null,
});

/** What a select with a `none` holds; left out where it is none. */
export const orLeftOut = <V extends string>(value: V | typeof none): V | undefined =>
  value === none ? undefined : value;

/** The line that a draft stands for; what was not said is left out. */
const lineOf = (draft: LineDraft) => ({
  title: draft.title.trim(),
  bookMinutes: minutesOf(draft.book) ?? undefined,
  price: decimalOf(draft.price) ?? undefined,
  payer: draft.payer,
  equipment: orLeftOut<(typeof equipmentKinds)[number]>(draft.equipment),
  skill: orLeftOut<(typeof skills)[number]>(draft.skill),
  concernId: draft.concernId ?? undefined,
  findingId: draft.findingId ?? undefined,
  causeId: draft.causeId ?? undefined,
  afterLineId: draft.afterLineId ?? undefined,
  fromFollowUpId: draft.followUpId ?? undefined,
});

type FieldsProps = { readonly draft: LineDraft; readonly change: (part: Partial<LineDraft>) => void };

/** Book hours and price, as told to the customer. */
export const HoursAndPrice = ({ draft, change }: FieldsProps): ReactElement => {
  const { t } = useText();
  const { currency } = useShopSettings();
  return (
    <div className="hf-pair">
      <Field
        label={t('piece.line.book')}
        value={draft.book}
        onChange={(book) => {
          change({ book });
        }}
        hint={t('piece.hoursHint')}
        wrong={minutesOf(draft.book) === null ? t('piece.wrong.minutes') : null}
      />
      <NumberField
        label={t('piece.line.price', { currency })}
        value={draft.price}
        onChange={(price) => {
          change({ price });
        }}
        unit={currency}
        units={[{ value: currency, label: currency }]}
        places={2}
        wrong={decimalOf(draft.price) === null ? t('piece.wrong.amount') : null}
      />
    </div>
  );
};

/** Who pays, and what the work needs. */
export const PayerAndNeeds = ({ draft, change }: FieldsProps): ReactElement => {
  const { t } = useText();
  return (
    <>
      <Choice
        label={t('piece.line.payer')}
        value={draft.payer}
        onChange={(payer) => {
          change({ payer });
        }}
        options={optionsOf(payers, (value) => t(`word.payer.${value}`))}
      />
      <div className="hf-pair">
        <Select
          label={t('piece.line.equipment')}
          value={draft.equipment}
          onChange={(equipment) => {
            change({ equipment });
          }}
          options={optionsOf([none, ...equipmentKinds] as const, (one) =>
            one === none ? t('piece.none') : t(`word.equipment.${one}`),
          )}
        />
        <Select
          label={t('piece.line.skill')}
          value={draft.skill}
          onChange={(skill) => {
            change({ skill });
          }}
          options={optionsOf([none, ...skills] as const, (one) =>
            one === none ? t('piece.none') : t(`word.skill.${one}`),
          )}
        />
      </div>
    </>
  );
};

type Relatives = Pick<LineFormProps, 'concerns' | 'findings' | 'causes' | 'lines'>;

/** What the line is about, and what it comes after. */
export const Relations = ({ draft, change, form }: FieldsProps & { readonly form: Relatives }): ReactElement => {
  const { t } = useText();
  const select = (
    key: 'concernId' | 'findingId' | 'causeId' | 'afterLineId',
    label: string,
    rows: readonly Named[],
  ): ReactElement => (
    <NamedSelect
      label={label}
      rows={rows}
      value={draft[key]}
      onChange={(id) => {
        change({ [key]: id });
      }}
    />
  );
  return (
    <>
      {select('concernId', t('piece.line.concern'), form.concerns)}
      {select('causeId', t('piece.line.cause'), form.causes ?? [])}
      {select('findingId', t('piece.line.finding'), form.findings ?? [])}
      {select('afterLineId', t('piece.line.after'), form.lines)}
    </>
  );
};

/** One more piece of work on a job. Its go-ahead is asked for afterwards. */
export const LineForm = (props: LineFormProps): ReactElement => {
  const { jobId, followUps = [], onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const [draft, setDraft] = useState<LineDraft>(() => newDraft(props.concerns));
  const change = (part: Partial<LineDraft>): void => {
    setDraft((before) => ({ ...before, ...part }));
  };
  const ready = said(draft.title) !== undefined && decimalOf(draft.price) !== null && minutesOf(draft.book) !== null;
  const send = async (): Promise<void> => {
    const line = lineOf(draft);
    const done = { text: 'piece.done.line', values: { title: line.title } } as const;
    if (await sending.run('addLine', { lineId: newId(), jobId, ...line }, done)) onClose();
  };
  const takeUp = (followUpId: string | null): void => {
    const title = followUps.find((one) => one.id === followUpId)?.title ?? '';
    change(said(draft.title) === undefined ? { followUpId, title } : { followUpId });
  };
  return (
    <FormSheet
      heading={t('piece.line.heading')}
      command="addLine"
      act={t('piece.line.act')}
      sending={sending}
      ready={ready}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <NamedSelect label={t('piece.line.followUp')} rows={followUps} value={draft.followUpId} onChange={takeUp} />
      <Field
        label={t('piece.line.title')}
        value={draft.title}
        onChange={(title) => {
          change({ title });
        }}
        isRequired
      />
      <HoursAndPrice draft={draft} change={change} />
      <PayerAndNeeds draft={draft} change={change} />
      <Relations draft={draft} change={change} form={props} />
    </FormSheet>
  );
};
