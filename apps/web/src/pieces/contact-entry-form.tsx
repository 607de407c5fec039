import { contactWays, movesOf } from '@holdfast/domain';
import { useState, type ReactElement, type ReactNode } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { optionsOf } from './options.js';
import { isoOf, said } from './typed.js';

/** What else was said in the same talk, and how it is recorded after the entry; false: refused, the form stays. */
export type SaidMore = {
  readonly ready: boolean;
  /** It in words: the answer in the log where nothing else is written; null while nothing was said. */
  readonly words: string | null;
  /** Shown once somebody was reached. */
  readonly fields: ReactNode;
  readonly record: (entry: {
    readonly way: (typeof contactWays)[number];
    readonly withName: string;
  }) => Promise<boolean>;
};

type ContactEntryProps = {
  readonly vehicleId: string;
  readonly plate: string;
  readonly jobId?: string;
  readonly followUpId?: string;
  /** The call that it ends; it stays while nobody was reached or a next try is named. */
  readonly callId?: string;
  /** Who is usually spoken with. */
  readonly asked: string | null;
  /** What it is about, in words. */
  readonly about?: string;
  readonly more?: SaidMore;
  readonly onClose: () => void;
};

/** An entry of the contact log: the way, with whom, the answer, the next try, whose move it is then. */
export const ContactEntryForm = (props: ContactEntryProps): ReactElement => {
  const { vehicleId, plate, jobId, followUpId, callId, onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const [way, setWay] = useState<(typeof contactWays)[number]>('telephone');
  const [withName, setWithName] = useState(props.asked ?? '');
  const [reached, setReached] = useState<'yes' | 'no' | null>(null);
  const [answer, setAnswer] = useState('');
  const [nextTryAt, setNextTryAt] = useState<number | null>(null);
  const [moveOf, setMoveOf] = useState<(typeof movesOf)[number]>('shop');
  const [isLogged, setLogged] = useState(false);
  const more = reached === 'yes' ? props.more : undefined;
  const inWords = said(answer) ?? more?.words ?? undefined;
  const isSaid = reached === 'no' || (reached === 'yes' && inWords !== undefined && more?.ready !== false);
  const log = async (): Promise<boolean> => {
    if (isLogged) return true;
    const about = { vehicleId, jobId, followUpId, callId };
    const what = { way, withName: said(withName), reached: reached === 'yes', answer: inWords };
    const next = { nextTryAt: isoOf(nextTryAt), moveOf };
    const input = { contactEntryId: newId(), ...about, ...what, ...next };
    const done = { text: 'piece.done.contactEntry', values: { plate } } as const;
    if ((await sending.run('recordContact', input, done)) === null) return false;
    setLogged(true);
    return true;
  };
  const send = async (): Promise<void> => {
    if ((await log()) && (more === undefined || (await more.record({ way, withName })))) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.contactEntry.heading', { plate })}
      command="recordContact"
      act={t('piece.contactEntry.act')}
      sending={sending}
      ready={isSaid}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      {props.about !== undefined && <p className="hf-entry-title">{props.about}</p>}
      <Choice
        label={t('piece.contactEntry.way')}
        value={way}
        onChange={setWay}
        options={optionsOf(contactWays, (value) => t(`word.contactWay.${value}`))}
      />
      <Field label={t('piece.contactEntry.withName')} value={withName} onChange={setWithName} />
      <Choice
        label={t('piece.contactEntry.reached')}
        value={reached}
        onChange={setReached}
        options={[
          { value: 'yes', label: t('piece.contactEntry.yes') },
          { value: 'no', label: t('piece.contactEntry.no') },
        ]}
      />
      {more?.fields}
      <TextArea
        label={t('piece.contactEntry.answer')}
        value={answer}
        onChange={setAnswer}
        rows={2}
        isRequired={reached === 'yes' && more?.words == null}
      />
      <Choice
        label={t('piece.contactEntry.moveOf')}
        value={moveOf}
        onChange={setMoveOf}
        options={optionsOf(movesOf, (value) => t(`word.moveOf.${value}`))}
      />
      <DateTimeField
        label={t('piece.contactEntry.nextTry')}
        value={nextTryAt}
        onChange={setNextTryAt}
        hint={t('piece.contactEntry.nextTryHint')}
      />
    </FormSheet>
  );
};
