import { calendarOfBoard } from '@holdfast/board';
import { type Row, skills } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { useMay } from '../live/session.js';
import { useSend } from '../live/use-send.js';
import { Refusal } from '../live/refusal.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { useWeekWords } from '../pieces/week-hours.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { ExceptionForm } from './exception-form.js';
import { useExceptionWords } from './exception-words.js';
import { comingExceptions, endingSkills, hoursOfPerson, skillsOf } from './person-facts.js';
import { PersonForm } from './person-form.js';

type PersonProps = { readonly person: Row<'person'>; readonly today: string };

/** A person who has left comes back, or one leaves: a turn of its own, so that nothing else changes with it. */
const ActiveAct = ({ person }: { readonly person: Row<'person'> }): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const sending = useSend();
  const change = (): void => {
    const input = { personId: person.id, version: person.version, active: !person.active };
    const text = person.active ? 'shop.done.left' : 'shop.done.back';
    void sending.run('changePerson', input, { text, values: { name: person.name } });
  };
  if (!may.command('changePerson')) return <></>;
  return (
    <>
      <Button
        size="small"
        look="plain"
        command="changePerson"
        isPending={sending.pending}
        label={t(person.active ? 'shop.person.leavesAbout' : 'shop.person.backAbout', { name: person.name })}
        onPress={change}
      >
        {t(person.active ? 'shop.person.leaves' : 'shop.person.back')}
      </Button>
      <Refusal problem={sending.problem} />
    </>
  );
};

const PersonEntry = ({ person, today }: PersonProps): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const weekWords = useWeekWords();
  const own = hoursOfPerson(board, person.id, today);
  const held = skillsOf(board, person.id).map((row) => {
    const skill = skills.find((one) => one === row.skill);
    const name = skill === undefined ? row.skill : t(`word.skill.${skill}`);
    if (row.until === null) return name;
    return t(row.until < today ? 'shop.person.skillOver' : 'shop.person.skillUntil', {
      skill: name,
      day: format.day(row.until),
    });
  });
  const exceptionWords = useExceptionWords();
  const coming = comingExceptions(board, person.id, today);
  const homeBay = board.tables.bay.get(person.homeBayId ?? '')?.name;
  const facts = [
    homeBay === undefined ? null : t('shop.person.homeBay', { bay: homeBay }),
    held.length === 0 ? null : t('shop.person.skills', { skills: held.join('; ') }),
    own === undefined ? null : t('shop.person.hours', { hours: weekWords(own.week) }),
  ]
    .filter((phrase) => phrase !== null)
    .join(' · ');
  return (
    <Entry
      id={`person-${person.id}`}
      acts={
        <>
          <Opener label={t('shop.change')} command="changePerson" about={person.name}>
            {(close) => <PersonForm person={person} onClose={close} />}
          </Opener>
          {person.active && (
            <Opener label={t('shop.exception.forPerson')} command="setException" about={person.name} look="plain">
              {(close) => <ExceptionForm personId={person.id} onClose={close} />}
            </Opener>
          )}
          <ActiveAct person={person} />
        </>
      }
    >
      <div className="hf-entry-line">
        <span className="hf-entry-title">{person.name}</span>
        <span>{person.roles.map((role) => t(`word.role.${role}`)).join(', ')}</span>
      </div>
      {facts !== '' && <p className="hf-quiet hf-small">{facts}</p>}
      <SmallList
        lines={coming.map((one) => t('shop.exception.on', { day: format.day(one.day), what: exceptionWords(one) }))}
      />
    </Entry>
  );
};

/** Certificates that end soon, or have ended: somebody has to be sent, or the work goes to somebody else. */
const EndingSkills = ({ today }: { readonly today: string }): ReactElement | null => {
  const { t, format } = useText();
  const ending = endingSkills(useBoard(), today);
  if (ending.length === 0) return null;
  return (
    <ul className="hf-flags" aria-label={t('shop.person.skillsEnding')}>
      {ending.map(({ name, skill, until, days }) => {
        const known = skills.find((one) => one === skill);
        const values = { name, skill: known === undefined ? skill : t(`word.skill.${known}`), day: format.day(until) };
        return (
          <li key={`${name} ${skill}`}>
            {days < 0 ? t('shop.person.skillEnded', values) : t('shop.person.skillEnds', { ...values, days })}
          </li>
        );
      })}
    </ul>
  );
};

/** Everybody who works here, and who did. */
export const PeoplePart = ({ id }: { readonly id: string }): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const today = calendarOfBoard(board).dateOf(useNow());
  const people = [...board.tables.person.values()].sort((a, b) => a.name.localeCompare(b.name));
  const gone = people.filter((person) => !person.active);
  return (
    <Part
      id={id}
      heading={t('shop.people')}
      acts={
        <Opener label={t('shop.person.add')} command="addPerson">
          {(close) => <PersonForm person={null} onClose={close} />}
        </Opener>
      }
    >
      <EndingSkills today={today} />
      <Entries>
        {people
          .filter((person) => person.active)
          .map((person) => (
            <PersonEntry key={person.id} person={person} today={today} />
          ))}
      </Entries>
      {gone.length > 0 && (
        <>
          <h3>{t('shop.person.gone')}</h3>
          <Entries>
            {gone.map((person) => (
              <PersonEntry key={person.id} person={person} today={today} />
            ))}
          </Entries>
        </>
      )}
    </Part>
  );
};
