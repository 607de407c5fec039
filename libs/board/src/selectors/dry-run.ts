/** Asks the domain, on the board's rows, what a command would be answered: the reason stands on the button before it is pressed. */
import { type By, type CommandInputs, type CommandName, type Refusal, Refused, rules } from '@holdfast/domain';
import type { Board } from '../board.js';
import { calendarOfBoard, rowsOf } from './rows-of.js';

/**
 * The refusals that the command would meet now, none when it would be accepted as far as this board knows. The server
 * decides on its own rows all the same.
 */
export function wouldRefuse<N extends CommandName>(
  board: Board,
  name: N,
  input: CommandInputs[N],
  by: By,
  now: number,
): readonly Refusal[] {
  let ids = 0;
  const decide = rules[name].decide;
  const outcome = decide(rowsOf(board).fork(), input, {
    now,
    effectiveAt: now,
    skewMs: 0,
    by,
    device: null,
    newId: () => `00000000-0000-7000-8000-${String((ids += 1)).padStart(12, '0')}`,
    calendar: calendarOfBoard(board),
  });
  return outcome instanceof Refused ? outcome.refusals : [];
}
