/** What operations with a fixed start have to do with the others. */
import { type Compiled, none } from './compile.js';

/** The last of `fixed` (by index) that comes before the operation on its job; `none`: none does. */
export function lastFixedBefore(compiled: Compiled, fixed: readonly number[], op: number): number {
  let last = none;
  for (const one of compiled.operations[op]?.before ?? []) {
    last = Math.max(last, fixed.indexOf(one), lastFixedBefore(compiled, fixed, one));
  }
  return last;
}

/** Whether an operation in a spot with one or two people would use anything that the fixed one needs. */
export function shares(
  compiled: Compiled,
  op: number,
  fixed: number,
  [spot, first, second]: readonly [number, number, number],
): boolean {
  const one = compiled.operations[op];
  const other = compiled.operations[fixed];
  if (one === undefined || other === undefined) return false;
  if (one.job === other.job || (spot !== none && other.spots[0] === spot)) return true;
  if (one.tools.some((tool) => other.tools.includes(tool))) return true;
  const who = other.needs > 0 ? other.people : [];
  return (first !== none && who.includes(first)) || (second !== none && who.includes(second));
}
