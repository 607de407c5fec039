/**
 * A refusal is a value: a code and the facts that its sentence needs (the sentence stands in the catalogues of the
 * contract). An exception, in contrast, is a bug or an outage.
 */
import type { RefusalCode } from './refusal-codes.js';

export type Facts = Readonly<Record<string, string | number | boolean | null>>;

export interface Refusal {
  readonly code: RefusalCode;
  readonly facts: Facts;
  /** Where the way out is: the row that the screen should offer, e.g. `{ table: 'concern', id }`. */
  readonly way?: { readonly table: string; readonly id: string };
}

export class Refused {
  constructor(readonly refusals: readonly Refusal[]) {}
}

export function refuse(code: RefusalCode, facts: Facts = {}, way?: Refusal['way']): Refused {
  return new Refused([way ? { code, facts, way } : { code, facts }]);
}
