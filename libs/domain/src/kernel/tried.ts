/** For specs: a decision carried out as the engine would, on a fork that a refusal throws away. */
import type { Decide, Outcome } from './decision.js';
import { circumstances, type GivenCircumstances } from './given.js';
import { type Refusal, Refused } from './refusal.js';
import type { RefusalCode } from './refusal-codes.js';
import type { Rows } from './rows.js';

export interface Tried {
  /** As they are after it; as they were where it was refused. */
  readonly rows: Rows;
  readonly outcome: Outcome | null;
  readonly refusals: readonly Refusal[];
  readonly codes: readonly RefusalCode[];
}

export function tried<I>(
  rule: { readonly decide: Decide<I> },
  rows: Rows,
  input: I,
  said: GivenCircumstances = {},
): Tried {
  const fork = rows.fork();
  const answer = rule.decide(fork, input, circumstances(said));
  if (answer instanceof Refused) {
    const { refusals } = answer;
    return { rows, outcome: null, refusals, codes: refusals.map(({ code }) => code) };
  }
  return { rows: fork, outcome: answer, refusals: [], codes: [] };
}
