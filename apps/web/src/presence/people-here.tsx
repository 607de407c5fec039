import { calendarOfBoard, rowsOf, type Board } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import './presence.css';
import { useSignedIn } from '../live/session.js';
import { FormSheet, Opener } from '../pieces/form-sheet.js';
import { optionsOf } from '../pieces/options.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { peopleHere, type PersonHere } from './presence.js';
import { usePresenceWords } from './presence-words.js';
import { useSaying, type Said } from './use-saying.js';

const ways: readonly Said[] = ['present', 'break', 'shopTime', 'gone'];

type SayForProps = { readonly board: Board; readonly person: Row<'person'>; readonly onClose: () => void };

/** Owner or manager says it for somebody else, now or since a time. */
const SayForSheet = ({ board, person, onClose }: SayForProps): ReactElement => {
  const { t } = useText();
  const { sending, say } = useSaying(board, person, false);
  const [kind, setKind] = useState<Said | null>(null);
  const [words, setWords] = useState('');
  const [at, setAt] = useState<number | null>(null);
  const send = async (): Promise<void> => {
    if (kind === null) return;
    const what = kind === 'shopTime' ? said(words) : undefined;
    if (await say({ kind, words: what, at })) onClose();
  };
  return (
    <FormSheet
      heading={t('presence.forOther.heading', { name: person.name })}
      command="recordAttendance"
      act={t('presence.forOther.act')}
      sending={sending}
      ready={kind !== null && (kind !== 'shopTime' || said(words) !== undefined)}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('presence.forOther.kind')}
        size="large"
        value={kind}
        onChange={setKind}
        options={optionsOf(ways, (way) => t(`presence.way.${way}`))}
      />
      {kind === 'shopTime' && (
        <Field label={t('presence.shopTime.words')} value={words} onChange={setWords} isRequired />
      )}
      <DateTimeField label={t('presence.forOther.at')} value={at} onChange={setAt} />
    </FormSheet>
  );
};

type RowProps = { readonly board: Board; readonly one: PersonHere; readonly words: string; readonly maySet: boolean };

const PersonRow = ({ board, one: { person, group }, words, maySet }: RowProps): ReactElement => {
  const { t } = useText();
  const bay = board.tables.bay.get(person.homeBayId ?? '')?.name;
  return (
    <li className="hf-person-row" data-group={group}>
      <span className="hf-person-who">
        <span className="hf-entry-title">{person.name}</span>
        <span className="hf-quiet hf-small">
          {[...person.roles.map((role) => t(`word.role.${role}`)), ...(bay === undefined ? [] : [bay])].join(', ')}
        </span>
      </span>
      <span className="hf-person-is">{words}</span>
      {maySet && (
        <Opener label={t('presence.forOther.open')} command="recordAttendance" look="plain" about={person.name}>
          {(close) => <SayForSheet board={board} person={person} onClose={close} />}
        </Opener>
      )}
    </li>
  );
};

/** Who is present and free, who works on what, and who is not here; owner and manager say it for others. */
export const PeopleHere = ({ board, now }: { readonly board: Board; readonly now: number }): ReactElement => {
  const { t } = useText();
  const { person: own } = useSignedIn();
  const words = usePresenceWords(board, now);
  const people = peopleHere(rowsOf(board), now, calendarOfBoard(board));
  const leads = own.roles.includes('owner') || own.roles.includes('manager');
  const free = people.filter(({ group }) => group === 'free').length;
  return (
    <section className="hf-off" aria-label={t('presence.people')}>
      <h2>
        {t('presence.people')} <span className="hf-quiet hf-small">{t('presence.freeCount', { count: free })}</span>
      </h2>
      <ul className="hf-people">
        {people.map((one) => (
          <PersonRow
            key={one.person.id}
            board={board}
            one={one}
            words={words(one.presence, one.group === 'free')}
            maySet={leads && one.person.id !== own.id}
          />
        ))}
      </ul>
    </section>
  );
};
