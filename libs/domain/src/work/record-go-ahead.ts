/**
 * The customer's word on a line. Every answer is kept with its day; the line holds the last one. The shop gives it itself
 * only for what it, or a guarantee, pays, and for a comeback.
 */
import { canonical, compare, plus, times } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { RecordGoAhead } from '../inputs.js';
import { hasRole, isLead, settingOn, todayOf } from '../questions/people-and-shop.js';
import { lineEnded } from '../questions/place-and-work.js';
import { type LineOfVisit, lineOfVisit } from './line-of-visit.js';

export const recordGoAhead: CommandRule<'recordGoAhead'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = lineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const { job, line } = found;
    const refused = mayNotRecord(rows, at) ?? mayNotChange(found, input) ?? mayNotGive(rows, found, input, at);
    if (refused) return refused;
    const upTo = input.answer === 'given' && input.upTo !== undefined ? canonical(input.upTo) : null;
    const answer = rows.add('goAhead', {
      id: at.newId(),
      ...recordedBy(at),
      jobId: job.id,
      lineId: line.id,
      answer: input.answer,
      byName: input.byName ?? null,
      how: input.how ?? null,
      upTo,
      words: input.words ?? null,
    });
    rows.change('workLine', line.id, { goAhead: input.answer, goAheadUpTo: upTo });
    const facts = {
      jobId: job.id,
      lineId: line.id,
      answer: input.answer,
      before: line.goAhead,
      how: input.how ?? null,
    };
    return { facts, created: { goAhead: answer.id } };
  },
};

/** Technician and parts clerk record them where the shop's setting of the day says so. */
function mayNotRecord(rows: Rows, at: Circumstances): Refused | null {
  if (hasRole(at.by, 'owner', 'manager', 'desk')) return null;
  return settingOn(rows, todayOf(at)).floorRecordsGoAheads ? null : refuse('work.goAheadNotYours');
}

function mayNotChange({ job, line }: LineOfVisit, input: RecordGoAhead): Refused | null {
  if (job.endedAt !== null) return refuse('work.jobEnded', { jobNumber: job.number });
  if (lineEnded(line)) return refuse('work.lineEnded', { progress: line.progress });
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
  if (input.how === undefined || (input.how !== 'shop' && input.byName === undefined)) {
    return refuse('work.goAheadByWhom');
  }
  const other = rows.list(
    'workLine',
    (one) => one.id !== line.id && one.jobId === job.id && one.choiceId !== null && one.choiceId === line.choiceId,
  );
  const taken = other.find((one) => one.goAhead === 'given' && one.progress !== 'dropped');
  if (taken) return refuse('work.choiceTaken', { lineId: taken.id }, { table: 'workLine', id: taken.id });
  return input.upTo === undefined || line.price === null ? null : tooLittle(rows, line.price, input.upTo, at);
}

/** The amount covers the price when the price is at most the shop's per cent above it. */
function tooLittle(rows: Rows, price: string, upTo: string, at: Circumstances): Refused | null {
  const { tolerancePercent } = settingOn(rows, todayOf(at));
  const covered = times(upTo, plus('1', times(tolerancePercent, '0.01')));
  return compare(price, covered) > 0 ? refuse('work.amountBelowPrice', { price, upTo, tolerancePercent }) : null;
}
