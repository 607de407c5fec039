import { standingKinds } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { MoneyField } from './money-field.js';
import { optionsOf } from './options.js';
import { decimalOf, said } from './typed.js';

type Reach = 'job' | 'vehicle' | 'customer';

type GiveStandingProps = {
  readonly customerId: string;
  readonly vehicleId: string;
  /** The visit it may be given for alone; null where no visit is spoken of. */
  readonly jobId: string | null;
  readonly asked: string | null;
  readonly onClose: () => void;
};

/** What the customer agrees to in advance: for what, up to how much for each visit, for which visits, until when. */
export const GiveStandingForm = (props: GiveStandingProps): ReactElement => {
  const { customerId, vehicleId, jobId, onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const [kind, setKind] = useState<(typeof standingKinds)[number]>('lookForFault');
  const [reach, setReach] = useState<Reach>(jobId === null ? 'vehicle' : 'job');
  const [upTo, setUpTo] = useState('');
  const [orderNumber, setOrderNumber] = useState('');
  const [byName, setByName] = useState(props.asked ?? '');
  const [untilDay, setUntilDay] = useState('');
  const amount = decimalOf(upTo);
  const reaches: readonly Reach[] = jobId === null ? ['vehicle', 'customer'] : ['job', 'vehicle', 'customer'];
  const send = async (): Promise<void> => {
    if (typeof amount !== 'string') return;
    const what = { kind, upTo: amount, orderNumber: said(orderNumber), byName: byName.trim() };
    const where = {
      untilDay: untilDay === '' ? undefined : untilDay,
      jobId: reach === 'job' ? (jobId ?? undefined) : undefined,
      vehicleId: reach === 'vehicle' ? vehicleId : undefined,
    };
    const done = { text: 'piece.done.standing', values: { kind: t(`word.standing.${kind}`) } } as const;
    const input = { standingGoAheadId: newId(), customerId, ...what, ...where };
    if (await sending.run('giveStandingGoAhead', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.standing.heading')}
      command="giveStandingGoAhead"
      act={t('piece.standing.act')}
      sending={sending}
      ready={typeof amount === 'string' && said(byName) !== undefined}
      {...(jobId === null ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.standing.kind')}
        value={kind}
        onChange={setKind}
        options={optionsOf(standingKinds, (value) => t(`word.standing.${value}`))}
      />
      <MoneyField
        label={t('piece.standing.upTo')}
        hint={t('piece.standing.upToHint')}
        value={upTo}
        onChange={setUpTo}
      />
      <Choice
        label={t('piece.standing.for')}
        value={reach}
        onChange={setReach}
        options={optionsOf(reaches, (value) => t(`piece.standing.for.${value}`))}
      />
      <Field label={t('piece.standing.byName')} value={byName} onChange={setByName} isRequired />
      <Field label={t('piece.standing.orderNumber')} value={orderNumber} onChange={setOrderNumber} />
      <DateField
        label={t('piece.standing.untilDay')}
        hint={t('piece.standing.untilHint')}
        value={untilDay}
        onChange={setUntilDay}
      />
    </FormSheet>
  );
};

type EndStandingProps = {
  readonly standing: { readonly id: string; readonly version: number; readonly kind: (typeof standingKinds)[number] };
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** A standing go-ahead holds no longer; lines that rest on it keep their go-ahead. */
export const EndStandingForm = ({ standing, jobId, onClose }: EndStandingProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const kind = t(`word.standing.${standing.kind}`);
  const send = async (): Promise<void> => {
    const input = { standingGoAheadId: standing.id, version: standing.version, words: words.trim() };
    const done = { text: 'piece.done.endStanding', values: { kind } } as const;
    if (await sending.run('endStandingGoAhead', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.endStanding.heading', { kind })}
      command="endStandingGoAhead"
      act={t('piece.endStanding.act')}
      sending={sending}
      ready={said(words) !== undefined}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-quiet">{t('piece.endStanding.under')}</p>
      <TextArea label={t('piece.endStanding.words')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};
