/** For specs: one command from the rows before it to the rows after it, settled as the write path settles it. */
import type { Circumstances, Outcome } from '../kernel/decision.js';
import { circumstances, type GivenCircumstances } from '../kernel/given.js';
import { type Facts, type Refusal, Refused } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { settle } from '../settle.js';

export interface CarriedOut {
  /** The rows after it; those from before when it was refused. */
  readonly rows: Rows;
  readonly at: Circumstances;
  readonly outcome: Outcome | null;
  readonly codes: readonly string[];
  readonly refusals: readonly Refusal[];
  readonly refusedFor: Facts | null;
}

let made = 0;

/** Ids of what is made are never used twice, so that commands can follow each other on the same rows. */
export function circumstancesOf(said: GivenCircumstances = {}): Circumstances {
  return { ...circumstances(said), newId: () => `made-${String(++made)}` };
}

export function carryOut<I>(
  rule: { readonly decide: (rows: Rows, input: I, at: Circumstances) => Outcome | Refused },
  before: Rows,
  input: I,
  said: GivenCircumstances = {},
): CarriedOut {
  const at = circumstancesOf(said);
  const rows = before.fork();
  const outcome = rule.decide(rows, input, at);
  if (outcome instanceof Refused) {
    const { refusals } = outcome;
    const codes = refusals.map((refusal) => refusal.code);
    return { rows: before, at, outcome: null, codes, refusals, refusedFor: refusals[0]?.facts ?? null };
  }
  settle(rows, at);
  return { rows, at, outcome, codes: [], refusals: [], refusedFor: null };
}
