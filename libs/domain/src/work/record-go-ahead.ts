/**
 * The customer's word on a line. Every answer is kept with its day; the line holds the last one. The shop gives it itself
 * only for what it, or a guarantee, pays, and for a comeback. A line may rest on a standing go-ahead that has enough left
 * for its price, and a contact agrees to no more than the customer lets them.
 */
import { canonical, compare, plus, times } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { flag } from '../kernel/flags.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { RecordGoAhead } from '../inputs.js';
import { givenInstead } from '../questions/choices.js';
import { hasRole, isLead, settingOn, todayOf } from '../questions/people-and-shop.js';
import type { Row } from '../tables/tables.js';
import { type LineOfVisit, openLineOfVisit } from './line-of-visit.js';
import { standingOfLine } from './standing-of-line.js';
import { agreesUpTo, contactLimitBelow } from './who-may-agree.js';

type Standing = Row<'standingGoAhead'> | null;

export const recordGoAhead: CommandRule<'recordGoAhead'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = openLineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const standing = standingNamed(rows, found, input, at);
    if (standing instanceof Refused) return standing;
    const refused =
      (standing ? null : mayNotRecord(rows, at)) ?? mayNotChange(found, input) ?? mayNotGive(rows, found, input, at);
    if (refused) return refused;
    const beyond = standing ? null : beyondContact(rows, found, input);
    if (beyond && !answersForIt(input, at)) return refuse('work.contactMayNotAgree', beyond);
    return record(rows, found, input, at, { standing, beyond });
  },
};

/** The standing go-ahead that it rests on; null where it rests on none. */
function standingNamed(rows: Rows, { job, line }: LineOfVisit, input: RecordGoAhead, at: Circumstances) {
  const { how, standingGoAheadId, answer } = input;
  if (how !== 'standing' && standingGoAheadId === undefined) return null;
  if (how !== 'standing' || standingGoAheadId === undefined || answer !== 'given')
    return refuse('work.standingMissing');
  const found = standingOfLine(rows, at, job, line, standingGoAheadId);
  if (!found) return refuse('work.standingNotForThis');
  if (line.price === null) return refuse('work.standingNeedsPrice', {}, { table: 'workLine', id: line.id });
  const { standing, left } = found;
  return compare(line.price, left) > 0 ? refuse('work.standingUsedUp', { left, price: line.price }) : standing;
}

/** Technician and parts clerk record them where the shop's setting of the day says so. */
export function mayNotRecord(rows: Rows, at: Circumstances): Refused | null {
  if (hasRole(at.by, 'owner', 'manager', 'desk')) return null;
  return settingOn(rows, todayOf(at)).floorRecordsGoAheads ? null : refuse('work.goAheadNotYours');
}

function mayNotChange({ line }: LineOfVisit, input: RecordGoAhead): Refused | null {
  const changesMind = input.answer === 'deferred' || input.answer === 'declined';
  return changesMind && line.startedAt !== null
    ? refuse('work.startedAlready', {}, { table: 'workLine', id: line.id })
    : null;
}

function mayNotGive(rows: Rows, { job, line }: LineOfVisit, input: RecordGoAhead, at: Circumstances): Refused | null {
  if (input.how === 'shop') {
    const pays = line.payer === 'shop' || line.payer === 'guarantee' || job.kind === 'comeback';
    if (!isLead(at.by) || !pays) return refuse('work.goAheadOfShop');
  }
  if (input.answer !== 'given') return null;
  const nameless = input.how !== 'shop' && input.how !== 'standing' && input.byName === undefined;
  if (input.how === undefined || nameless) return refuse('work.goAheadByWhom');
  const taken = givenInstead(rows, line);
  if (taken) return refuse('work.choiceTaken', { lineId: taken.id }, { table: 'workLine', id: taken.id });
  return input.upTo === undefined || line.price === null ? null : tooLittle(rows, line.price, input.upTo, at);
}

/** The amount covers the price when the price is at most the shop's per cent above it. */
function tooLittle(rows: Rows, price: string, upTo: string, at: Circumstances): Refused | null {
  const { tolerancePercent } = settingOn(rows, todayOf(at));
  const covered = times(upTo, plus('1', times(tolerancePercent, '0.01')));
  return compare(price, covered) > 0 ? refuse('work.amountBelowPrice', { price, upTo, tolerancePercent }) : null;
}

/** The limit of the contact who is named, where the amount lies above it. */
function beyondContact(rows: Rows, { job, line }: LineOfVisit, { answer, how, byName, upTo }: RecordGoAhead) {
  if (answer !== 'given' || how === 'shop' || byName === undefined) return null;
  const amount = upTo ?? line.price;
  const limit = contactLimitBelow(rows, job, byName, amount);
  return limit === null ? null : { limit: canonical(limit), amount: amount === null ? null : canonical(amount) };
}

/** Desk, manager and owner may take such a word all the same, in words of their own. */
function answersForIt({ words }: RecordGoAhead, { by }: Circumstances): boolean {
  return words !== undefined && hasRole(by, 'owner', 'manager', 'desk');
}

interface GoAheadFrom {
  readonly standing: Standing;
  readonly beyond: ReturnType<typeof beyondContact>;
}

function record(rows: Rows, { job, line }: LineOfVisit, input: RecordGoAhead, at: Circumstances, from: GoAheadFrom) {
  const { standing, beyond } = from;
  const byName = input.byName ?? standing?.byName ?? null;
  const upTo = amountOf(rows, job, line, input, from);
  const standingId = standing?.id ?? null;
  const { answer, how = null } = input;
  const of = { jobId: job.id, lineId: line.id };
  const said = { answer, byName, how, upTo, words: input.words ?? null, standingId };
  const kept = rows.add('goAhead', { id: at.newId(), ...recordedBy(at), ...of, ...said });
  const withdrawn = answer === 'given' ? { withdrawnAt: null } : {};
  rows.change('workLine', line.id, { goAhead: answer, goAheadUpTo: upTo, standingId, ...withdrawn });
  if (beyond) {
    const subjects = { jobId: job.id, vehicleId: job.vehicleId };
    flag(rows, at, 'work.goAheadBeyondContact', subjects, { lineId: line.id, ...beyond });
  }
  return { facts: { ...of, answer, before: line.goAhead, how, standingId }, created: { goAhead: kept.id } };
}

/** What was said; of a contact with a limit, who agreed to a line without a price and said no amount, that limit. */
function amountOf(rows: Rows, job: Row<'job'>, line: Row<'workLine'>, input: RecordGoAhead, from: GoAheadFrom) {
  if (input.answer !== 'given') return null;
  if (input.upTo !== undefined) return canonical(input.upTo);
  const { byName, how } = input;
  const open = line.price === null && how !== 'shop' && !from.standing && !from.beyond && byName !== undefined;
  const limit = open ? agreesUpTo(rows, job, byName) : null;
  return limit === null ? null : canonical(limit);
}
