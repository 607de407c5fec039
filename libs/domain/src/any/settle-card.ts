/**
 * A contested report is settled. Left: what stands stays. Taken: it is what happened; what it clashes with ends where the
 * report begins, or is void where it began later. What was settled after the report about the same vehicle, spot or person
 * stays, so that a late answer to a card never undoes what everybody has seen since.
 */
import { type Circumstances, type Outcome, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { ReturnFromRoadTest, StartWork, TakeIntoBay, TakeOnRoadTest } from '../inputs.js';
import { type Destination, ownSpotOf, placeRow, spotOf, spotUseRow } from '../place/move-vehicle.js';
import { backTo } from '../place/road-test.js';
import { isLead, specOn, todayOf } from '../questions/people-and-shop.js';
import { freeSpot, lineEnded, live, usedByOthers } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';
import { applyEdits, clocksOfPerson, placesOfVehicle, usesOfSpot, usesOfVehicle } from '../timeline/lanes.js';
import { clashes, clear, type Interval, overlap, replace, type Span } from '../timeline/timeline.js';
import { presentOnClock } from '../time/presence.js';
import { noteClocksOf } from '../work/line-of-visit.js';

export const settleCard: CommandRule<'settleCard'> = {
  needs: ({ reportId }) => ({ reports: [reportId] }),
  decide(rows, { reportId, take, words }, at) {
    const report = live(rows, 'report', reportId);
    if (!report) return notThere('report', reportId);
    if (report.state !== 'contested') return refuse('card.settled', { state: report.state });
    const own = at.by.personId !== null && (report.byId === at.by.personId || report.personId === at.by.personId);
    if (!own && !isLead(at.by)) return refuse('card.notYours');
    const taken = take ? takeReport(rows, report, at) : {};
    if (taken instanceof Refused) return taken;
    rows.change('report', report.id, {
      state: take ? 'settled' : 'dismissed',
      settledAt: at.now,
      settledById: at.by.personId,
      settledWords: words,
    });
    return { facts: { reportId, kind: report.kind, jobId: report.jobId, take }, created: taken };
  },
};

type Created = NonNullable<Outcome['created']>;

function takeReport(rows: Rows, report: Row<'report'>, at: Circumstances): Created | Refused {
  const visit = visitOf(rows, report.jobId);
  if (visit instanceof Refused) return visit;
  if (visit.job.endedAt !== null) return refuse('card.jobEnded', { jobNumber: visit.job.number });
  switch (report.kind) {
    case 'takeIntoBay':
      return takeStay(rows, report, visit, at);
    case 'startWork':
      return takeClock(rows, report, at);
    case 'takeOnRoadTest':
      return takeRoadTest(rows, report, visit, at);
    case 'returnFromRoadTest':
      return takeReturn(rows, report, visit, at);
    // These clash with nothing but the end of the visit.
    case 'moveToYard':
    case 'stopWork':
    case 'sendAway':
    case 'bringBack':
      return refuse('card.overtaken');
  }
}

/**
 * From the report's own time to the next thing settled on one of these lanes that the report does not clash with; null
 * when by now something else is known of that very instant.
 */
function spanOf(report: Row<'report'>, lanes: readonly (readonly Interval[])[]): Span | null {
  const fromAt = report.effectiveAt;
  const later = lanes.flat().filter((one) => one.fromAt >= fromAt && !report.against.includes(one.id));
  const toAt = later.length === 0 ? null : Math.min(...later.map((one) => one.fromAt));
  return toAt !== null && toAt <= fromAt ? null : { fromAt, toAt };
}

function takeStay(rows: Rows, report: Row<'report'>, visit: Visit, at: Circumstances): Created | Refused {
  const said = report.said as unknown as TakeIntoBay;
  const { vehicle } = visit;
  const bayId = said.bayId;
  const spot = said.spot ?? spotMeant(rows, report, said, visit, at);
  const places = placesOfVehicle(rows, vehicle.id);
  const span = spanOf(report, [places, usesOfSpot(rows, bayId, spot)]);
  if (!span) return refuse('card.overtaken');
  for (const use of clashes(usesOfSpot(rows, bayId, spot), span)) {
    if (use.vehicleId !== vehicle.id) putOut(rows, at, use, span);
  }
  const placeId = freshId(rows, 'place', said.placeId);
  return putThere(rows, at, visit, { ...said, placeId, kind: 'bay', spot }, span);
}

/** Where the report named no spot: a free one if there is by now, else the spot of what it clashes with. */
function spotMeant(
  rows: Rows,
  report: Row<'report'>,
  { bayId }: TakeIntoBay,
  { vehicle }: Visit,
  at: Circumstances,
): number {
  const span = { fromAt: report.effectiveAt, toAt: null };
  const { spots } = specOn(rows, bayId, todayOf(at));
  const clash = report.against.map((id) => rows.find('spotUse', id)).find((use) => use !== undefined);
  return freeSpot(rows, bayId, spots, span, vehicle.id) ?? clash?.spot ?? 1;
}

/** The other vehicle was not there in the span after all: what is lost of its stay, it stood in the yard. */
function putOut(rows: Rows, at: Circumstances, use: Row<'spotUse'>, span: Span): void {
  applyEdits(rows, at, 'spotUse', clear([use], span));
  const other = use.kind === 'stands' ? visitOf(rows, use.jobId) : null;
  if (!other || other instanceof Refused) return;
  const fromAt = Math.max(use.fromAt, span.fromAt);
  const toAt = use.toAt === null || (span.toAt !== null && span.toAt < use.toAt) ? span.toAt : use.toAt;
  const yard = placeRow(at, other, { kind: 'yard' });
  applyEdits(rows, at, 'place', replace(placesOfVehicle(rows, other.vehicle.id), { fromAt, toAt }), yard);
}

/** It went out then, keeping the spot it stood in where that was said and nobody else has had it since. */
function takeRoadTest(rows: Rows, report: Row<'report'>, visit: Visit, at: Circumstances): Created | Refused {
  const said = report.said as unknown as TakeOnRoadTest;
  const { id: vehicleId } = visit.vehicle;
  const span = spanOf(report, [placesOfVehicle(rows, vehicleId)]);
  if (!span) return refuse('card.overtaken');
  const stood = usesOfVehicle(rows, vehicleId).find((use) => use.fromAt <= span.fromAt && overlap(use, span));
  const taken = stood && usedByOthers(rows, stood.bayId, stood.spot, span, vehicleId).length > 0;
  const keeps = said.keepSpot && stood && !taken ? { bayId: stood.bayId, spot: stood.spot } : null;
  const { odometerOut, dueBackAt } = said;
  const to = { kind: 'roadTest', odometerOut, dueBackAt, keeps, odometerUnit: visit.job.odometerUnit } as const;
  const placeId = freshId(rows, 'place', said.placeId);
  return putThere(rows, at, visit, { ...to, placeId, driverId: report.personId ?? '' }, span);
}

/** It was back then: in the spot that is kept for it where that was said, else in the yard. */
function takeReturn(rows: Rows, report: Row<'report'>, visit: Visit, at: Circumstances): Created | Refused {
  const said = report.said as unknown as ReturnFromRoadTest;
  const { id: vehicleId } = visit.vehicle;
  const span = spanOf(report, [placesOfVehicle(rows, vehicleId)]);
  if (!span) return refuse('card.overtaken');
  const to = backTo({ ...said, placeId: freshId(rows, 'place', said.placeId) }, ownSpotOf(rows, vehicleId, 'kept'));
  return putThere(rows, at, visit, to, span);
}

/** The vehicle was at that place in the span, whatever was settled of it; the caller has seen to its spot. */
function putThere(rows: Rows, at: Circumstances, visit: Visit, to: Destination, span: Span): Created {
  const { id: vehicleId } = visit.vehicle;
  applyEdits(rows, at, 'spotUse', clear(usesOfVehicle(rows, vehicleId), span));
  const brought = placeRow(at, visit, to);
  applyEdits(rows, at, 'place', replace(placesOfVehicle(rows, vehicleId), span), brought);
  const spot = spotOf(to);
  if (spot) {
    applyEdits(rows, at, 'spotUse', [{ do: 'insert', like: null, span }], spotUseRow(at, visit, spot));
  }
  return { place: brought.id };
}

/** The id that the client made, unless a row has it by now. */
function freshId(rows: Rows, table: 'place' | 'clock', id: string | undefined): string | undefined {
  return rows.find(table, id) ? undefined : id;
}

function takeClock(rows: Rows, report: Row<'report'>, at: Circumstances): Created | Refused {
  const said = report.said as unknown as StartWork;
  const line = live(rows, 'workLine', said.lineId);
  if (!line) return notThere('workLine', said.lineId);
  if (lineEnded(line)) return refuse('card.lineEnded', { progress: line.progress });
  const personId = report.personId ?? '';
  const lane = clocksOfPerson(rows, personId);
  const span = spanOf(report, [lane]);
  if (!span) return refuse('card.overtaken');
  const clashing = clashes(lane, span);
  const of = { jobId: report.jobId, lineId: line.id, personId };
  const id = freshId(rows, 'clock', said.clockId) ?? at.newId();
  const brought = { id, ...recordedBy(at), ...of, bench: said.bench ?? false };
  applyEdits(rows, at, 'clock', replace(lane, span), brought);
  const startedAt = line.startedAt === null ? span.fromAt : Math.min(line.startedAt, span.fromAt);
  rows.change('workLine', line.id, { progress: 'started', startedAt });
  if (rows.get('clock', id).toAt === null) presentOnClock(rows, at, personId, span.fromAt);
  for (const lineId of new Set([line.id, ...clashing.map((clock) => clock.lineId)])) noteClocksOf(rows, lineId);
  return { clock: id };
}
