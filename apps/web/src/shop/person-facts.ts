import type { Board } from '@holdfast/board';
import { type Row, validOn } from '@holdfast/domain';

/** Skills of a person as they are held now. */
export const skillsOf = (board: Board, personId: string): Row<'personSkill'>[] =>
  [...board.tables.personSkill.values()].filter((row) => row.personId === personId);

/** Own hours of a person that hold on `today`; undefined: none were ever given. */
export const hoursOfPerson = (board: Board, personId: string, today: string): Row<'personHours'> | undefined =>
  validOn(
    [...board.tables.personHours.values()].filter((row) => row.personId === personId),
    today,
  );
