/**
 * An open line said anew. A price that moves further than the shop's tolerance above what the customer agreed to asks the
 * customer again; so does a line that the customer is to pay now and was not to pay before. Work that was begun goes on:
 * what is happening is never stopped by a number.
 */
import type { ChangeLine } from '../inputs.js';
import { canonical, compare, plus, times } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { hasRole, settingOn, todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { agreedTo } from '../questions/totals.js';
import type { Row } from '../tables/tables.js';
import { guardedSkills } from '../tables/words.js';
import { type LineOfVisit, openLineOfVisit } from './line-of-visit.js';
import { standingCovers } from './standing-of-line.js';

type Line = Row<'workLine'>;

export const changeLine: CommandRule<'changeLine'> = {
  needs: ({ lineId }) => ({ lines: [lineId] }),
  decide(rows, input, at) {
    const found = openLineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const refused = badReference(rows, input, found) ?? skillKept(input, found.line, at);
    if (refused) return refused;
    const { job, line } = found;
    const said = saidAnew(input);
    const after = rows.change('workLine', line.id, { ...said, ...keptAgreement(line, said) });
    const asked = asksAgain(rows, at, found, after);
    if (asked !== null) askAgain(rows, at, line, asked);
    const changed = Object.keys(said).sort().join(' ');
    const facts = { jobId: job.id, lineId: line.id, changed, askedAgain: asked !== null };
    return { facts };
  },
};

/** Only what was said: a field left out stays, null takes it away. */
function saidAnew(input: ChangeLine): Partial<Line> {
  const { title, bookMinutes, price, payer, equipment, skill, concernId, causeId, choiceId, afterLineId } = input;
  return {
    ...(title === undefined ? {} : { title }),
    ...(bookMinutes === undefined ? {} : { bookMinutes }),
    ...(price === undefined ? {} : { price: price === null ? null : canonical(price) }),
    ...(payer === undefined ? {} : { payer }),
    ...(equipment === undefined ? {} : { equipment }),
    ...(skill === undefined ? {} : { skill }),
    ...(concernId === undefined ? {} : { concernId }),
    ...(causeId === undefined ? {} : { causeId }),
    ...(choiceId === undefined ? {} : { choiceId }),
    ...(afterLineId === undefined ? {} : { afterLineId }),
  };
}

/** Concern, cause and the line before have to be there and of this visit; "after" never runs in a ring. */
function badReference(rows: Rows, input: ChangeLine, { job, line }: LineOfVisit): Refused | null {
  const named = [
    ['concern', input.concernId],
    ['cause', input.causeId],
    ['workLine', input.afterLineId],
  ] as const;
  for (const [table, id] of named) {
    if (id === undefined || id === null) continue;
    const row = live(rows, table, id);
    if (!row) return notThere(table, id);
    if (row.jobId !== job.id) return refuse('work.otherJob', { table, id });
  }
  const before = input.afterLineId ?? null;
  if (before === null || !comesAfter(rows, before, line.id)) return null;
  return refuse('work.afterItself', { lineId: before }, { table: 'workLine', id: before });
}

/** Whether the line is the other one, or waits for it over any number of lines between. */
function comesAfter(rows: Rows, lineId: string, otherId: string): boolean {
  const seen = new Set<string>();
  for (
    let id: string | null = lineId;
    id !== null && !seen.has(id);
    id = rows.find('workLine', id)?.afterLineId ?? null
  ) {
    if (id === otherId) return true;
    seen.add(id);
  }
  return false;
}

/** Rule 5: a line that needs a qualified person does not lose that by a word from the floor. */
function skillKept({ skill }: ChangeLine, line: Line, at: Circumstances): Refused | null {
  const taken =
    skill !== undefined && line.skill !== null && guardedSkills.includes(line.skill) && skill !== line.skill;
  return taken && !hasRole(at.by, 'owner') ? refuse('work.skillGuarded', { skill: line.skill }) : null;
}

/**
 * A given line agreed at its price keeps that amount when the price moves, so that small steps do not add up to more than
 * the shop allows. One that was given without any price has no such amount until a price was told.
 */
function keptAgreement(line: Line, said: Partial<Line>): Partial<Line> {
  const moves = said.price !== undefined && said.price !== line.price;
  const atItsPrice = line.goAhead === 'given' && line.goAheadUpTo === null && line.price !== null;
  return moves && atItsPrice ? { goAheadUpTo: line.price } : {};
}

/** What the customer agreed to for the line, where that is no longer enough; null where nobody has to be asked. */
function asksAgain(rows: Rows, at: Circumstances, { job, line: before }: LineOfVisit, line: Line): string | null {
  if (line.goAhead !== 'given' || line.payer === 'shop' || line.payer === 'guarantee') return null;
  if (line.payer === 'customer' && before.payer !== 'customer') return '0';
  const agreed = agreedTo(line);
  if (line.price === null || agreed === null || line.price === before.price) return null;
  const { tolerancePercent } = settingOn(rows, todayOf(at));
  const most = times(agreed, plus('1', times(tolerancePercent, '0.01')));
  if (compare(line.price, most) <= 0) return null;
  return standingCovers(rows, at, job, line, line.price) ? null : agreed;
}

function askAgain(rows: Rows, at: Circumstances, { id: lineId, jobId }: Line, agreed: string): void {
  rows.add('goAhead', {
    id: at.newId(),
    ...recordedBy(at),
    jobId,
    lineId,
    answer: 'withCustomer',
    byName: null,
    how: null,
    upTo: agreed,
    words: null,
    standingId: null,
  });
  rows.change('workLine', lineId, { goAhead: 'withCustomer', goAheadUpTo: agreed });
}
