import { type Board, rowsOf } from '@holdfast/board';
import { type Row, validOn } from '@holdfast/domain';
import { daysBetween } from '@holdfast/shop-calendar';

/** Skills of a person as they are held now. */
export const skillsOf = (board: Board, personId: string): Row<'personSkill'>[] =>
  [...board.tables.personSkill.values()].filter((row) => row.personId === personId);

/** Own hours of a person that hold on `today`; undefined: none were ever given. */
export const hoursOfPerson = (board: Board, personId: string, today: string): Row<'personHours'> | undefined =>
  validOn(
    [...board.tables.personHours.values()].filter((row) => row.personId === personId),
    today,
  );

/** A certificate is shown as ending from so many days before its last day on. */
const soonDays = 60;

export type EndingSkill = {
  readonly name: string;
  readonly skill: string;
  readonly until: string;
  /** Days from today to its last day; below nought it is over. */
  readonly days: number;
};

/** Skills of those who work here that end soon or have ended, the first to end first. */
export const endingSkills = (board: Board, today: string): EndingSkill[] =>
  rowsOf(board)
    .list('personSkill')
    .flatMap(({ personId, skill, until }) => {
      const person = board.tables.person.get(personId);
      if (until === null || person?.active !== true) return [];
      return [{ name: person.name, skill, until, days: daysBetween(today, until) }];
    })
    .filter(({ days }) => days <= soonDays)
    .sort((a, b) => a.days - b.days || a.name.localeCompare(b.name));

/** Days from today on with other hours: of one person, or those of the shop (null); the next first. */
export const comingExceptions = (board: Board, personId: string | null, today: string): Row<'hoursException'>[] =>
  rowsOf(board)
    .list('hoursException', (one) => one.personId === personId && one.day >= today)
    .sort((a, b) => (a.day < b.day ? -1 : 1));
