/** How the plan before is laid out again: in the order it had, where and with whom it was as far as that is possible. */
import { type Compiled, type Operation, none } from './compile.js';
import type { PreviousPlace } from './previous.js';
import { loosePeople, looseSpotAndPeople } from './weighing.js';

/** The operations of `order` by their start before, new ones last; what has to come first on its job does. */
export function orderAsBefore(
  { operations }: Compiled,
  previous: readonly (PreviousPlace | null)[],
  order: Iterable<number>,
  fixed: Iterable<number>,
): number[] {
  const rank = (op: number) => previous[op]?.start ?? Infinity;
  const inOrder: number[] = [];
  const seen = new Set<number>(fixed);
  const take = (op: number): void => {
    if (seen.has(op)) return;
    seen.add(op);
    for (const before of operations[op]?.before ?? []) take(before);
    inOrder.push(op);
  };
  for (const op of [...order].sort((a, b) => rank(a) - rank(b))) take(op);
  return inOrder;
}

/** What has to be chosen anew, as the evaluator's `loose`: 0 where spot and people before are still possible. */
export function loosenessAfter(operation: Operation | undefined, was: PreviousPlace | null): number {
  if (operation === undefined || was === null) return looseSpotAndPeople;
  const { spots, people, needs } = operation;
  const spotKept = was.spot === none ? spots.length === 0 : spots.includes(was.spot);
  if (!spotKept) return looseSpotAndPeople;
  const who = [was.first, was.second].filter((person) => person !== none);
  const peopleKept = who.length === needs && who.every((person) => people.includes(person));
  return peopleKept ? 0 : loosePeople;
}
