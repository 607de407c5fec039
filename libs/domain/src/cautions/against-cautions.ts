/** What the cautions of a vehicle say against an act: with every reason and its caution for an intention, flags for a fact. */
import type { Circumstances } from '../kernel/decision.js';
import { flag } from '../kernel/flags.js';
import type { Refusal } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { hasSkill, todayOf } from '../questions/people-and-shop.js';
import { openCautions, pointsNamed } from '../questions/place-and-work.js';
import type { Row } from '../tables/tables.js';
import { type Act, type Verdict, verdictOf } from './caution-table.js';

/** Whose act it is, where the table asks: the sender, unless somebody else is named (whose clock it is). */
export interface Actor {
  readonly personId: string | null;
}

const senderOf = ({ by }: Circumstances): Actor => ({ personId: by.personId });

function passes(rows: Rows, at: Circumstances, caution: Row<'caution'>, verdict: Verdict, actor: Actor): boolean {
  switch (verdict) {
    case 'allow':
    case 'flag':
      return true;
    case 'refuse':
      return false;
    case 'points':
      return pointsNamed(rows, caution);
    default:
      return actor.personId !== null && hasSkill(rows, actor.personId, verdict.skill, todayOf(at));
  }
}

/** The open cautions of the vehicle that refuse the act to this person; those that ask nobody's skill are for everybody. */
export function forbidding(
  rows: Rows,
  at: Circumstances,
  vehicleId: string,
  act: Act,
  actor: Actor = senderOf(at),
): Row<'caution'>[] {
  return openCautions(rows, vehicleId).filter((one) => !passes(rows, at, one, verdictOf(one.code, act), actor));
}

/** The open cautions that refuse the act to everybody, whoever asks and whenever: what a list of reasons can show. */
export function forbiddingAll(rows: Rows, vehicleId: string, act: Act): Row<'caution'>[] {
  return openCautions(rows, vehicleId).filter((one) => verdictOf(one.code, act) === 'refuse');
}

/** Every reason against an act that is intended, each with the caution as the way out. */
export function againstAct(rows: Rows, at: Circumstances, vehicleId: string, act: Act, actor?: Actor): Refusal[] {
  return forbidding(rows, at, vehicleId, act, actor).map(({ id, code }) => ({
    code: verdictOf(code, act) === 'points' ? ('lift.pointsNotNamed' as const) : ('caution.forbids' as const),
    facts: { cautionId: id, code, act },
    way: { table: 'caution', id },
  }));
}

/** Marks an act that is allowed with a flag, for the cautions that say so. */
export function flagAllowedAct(
  rows: Rows,
  at: Circumstances,
  { jobId, vehicleId }: { readonly jobId: string; readonly vehicleId: string },
  act: Act,
): void {
  for (const { id, code } of openCautions(rows, vehicleId)) {
    if (verdictOf(code, act) !== 'flag') continue;
    flag(rows, at, 'work.againstCaution', { jobId, vehicleId }, { cautionId: id, code, act });
  }
}

/** An act that has happened is recorded, and flagged for each caution that stood against it. */
export function flagAct(
  rows: Rows,
  at: Circumstances,
  of: { readonly jobId: string; readonly vehicleId: string },
  act: Act,
  actor?: Actor,
): void {
  for (const { facts } of againstAct(rows, at, of.vehicleId, act, actor)) {
    flag(rows, at, 'work.againstCaution', of, facts);
  }
  flagAllowedAct(rows, at, of, act);
}
