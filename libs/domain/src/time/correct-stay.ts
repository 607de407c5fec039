/** Where a vehicle stood put right: a stay that was missing, another bay, beginning or end of one that is there. */
import type { AddStay, CorrectStay } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { Destination } from '../place/move-vehicle.js';
import { specOn } from '../questions/people-and-shop.js';
import { freeSpot, live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';
import { overlap, type Span } from '../timeline/timeline.js';
import { againstSpan, instantsOf, spanSaid, told } from './corrections.js';
import { againstClosedMonth } from './months.js';
import { layStay } from './stay-edits.js';

const tables = ['place', 'spotUse'] as const;

/** A vehicle is nowhere in the shop before it arrived and after it left; a stay runs on only while it is here. */
function againstVisit({ job }: Visit, span: Span, at: Circumstances): Refused | null {
  const { number: jobNumber, arrivedAt, endedAt } = job;
  if (span.toAt === null && endedAt !== null) return refuse('time.cannotRun');
  const end = span.toAt ?? at.now;
  if (arrivedAt === null) return refuse('time.notArrived', { jobNumber });
  if (span.fromAt >= arrivedAt && end <= (endedAt ?? at.now)) return null;
  return refuse('time.outsideVisit', { jobNumber, ...told({ fromAt: arrivedAt, toAt: endedAt }) });
}

type Standing = Extract<Destination, { readonly kind: 'bay' | 'yard' }>;

/** Of which visit and time it is said, and the stay that was recorded. */
interface Meant {
  readonly visit: Visit;
  readonly span: Span;
  readonly before: Row<'place'> | null;
}

/** The bay and spot meant: the one said, the one the vehicle had, else a free one. */
function bayStay(
  rows: Rows,
  at: Circumstances,
  { visit, span, before }: Meant,
  bayId: string,
  said: number | undefined,
): Standing | Refused {
  if (!live(rows, 'bay', bayId)) return notThere('bay', bayId);
  const { spots } = specOn(rows, bayId, at.calendar.dateOf(span.fromAt));
  if (said !== undefined && said > spots) return refuse('place.noSuchSpot', { spot: said, spots });
  const own = before?.bayId === bayId ? before.spot : null;
  const spot = said ?? own ?? freeSpot(rows, bayId, spots, span, visit.vehicle.id) ?? 1;
  return { kind: 'bay', bayId, spot };
}

export const addStay: CommandRule<'addStay'> = {
  needs: (input) => ({
    jobs: [input.jobId],
    bays: input.bayId === undefined ? [] : [input.bayId],
    baysOfJobs: true,
    times: instantsOf(input),
    tables,
  }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    const { placeId, fromAt, toAt, words } = input;
    if (placeId !== undefined && rows.find('place', placeId)) {
      return refuse('time.alreadyRecorded', { table: 'place', id: placeId });
    }
    const span = { fromAt, toAt };
    const refused = againstSpan(span, at) ?? againstVisit(visit, span, at) ?? againstClosedMonth(rows, at, [span]);
    if (refused) return refused;
    const to = addedTo(rows, at, visit, input, span);
    if (to instanceof Refused) return to;
    const laid = layStay(rows, at, { visit, before: null, to: { ...to, placeId }, span, words });
    if (laid instanceof Refused) return laid;
    return { facts: factsOf(visit, laid), created: { place: laid.id } };
  },
};

function addedTo(rows: Rows, at: Circumstances, visit: Visit, input: AddStay, span: Span): Standing | Refused {
  const { kind, bayId, spot, yardSpot } = input;
  if (kind === 'yard') return { kind, yardSpot };
  return bayId === undefined
    ? refuse('time.bayMissing')
    : bayStay(rows, at, { visit, span, before: null }, bayId, spot);
}

function factsOf({ job, vehicle }: Visit, place: Row<'place'>) {
  const of = { jobId: job.id, jobNumber: job.number, vehicleId: vehicle.id };
  return { ...of, kind: place.kind, bayId: place.bayId, spot: place.spot };
}

export const correctStay: CommandRule<'correctStay'> = {
  needs: (input) => ({
    places: [input.placeId],
    bays: input.bayId === undefined ? [] : [input.bayId],
    baysOfJobs: true,
    times: instantsOf(input),
    tables,
  }),
  decide(rows, input, at) {
    const before = live(rows, 'place', input.placeId);
    if (!before) return notThere('place', input.placeId);
    const visit = visitOf(rows, before.jobId);
    if (visit instanceof Refused) return visit;
    const span = spanSaid(before, input);
    const refused =
      againstKind(before, input) ??
      againstSpan(span, at) ??
      (overlap(before, span) ? null : refuse('time.otherStay')) ??
      againstVisit(visit, span, at) ??
      againstClosedMonth(rows, at, [before, span]);
    if (refused) return refused;
    const to = correctedTo(rows, at, { visit, span, before }, input);
    if (to instanceof Refused) return to;
    if (to.kind === before.kind && isUnchanged(before, to, span)) return refuse('time.nothingChanged');
    const laid = layStay(rows, at, { visit, before, to, span, words: input.words });
    if (laid instanceof Refused) return laid;
    return { facts: factsOf(visit, laid), created: { place: laid.id } };
  },
};

function againstKind({ kind }: Row<'place'>, { bayId, spot }: CorrectStay): Refused | null {
  if (kind !== 'bay' && kind !== 'yard') return refuse('time.notAStay', { kind });
  return kind === 'yard' && (bayId !== undefined || spot !== undefined) ? refuse('time.notInBay') : null;
}

function correctedTo(
  rows: Rows,
  at: Circumstances,
  meant: Meant & { readonly before: Row<'place'> },
  input: CorrectStay,
): Standing | Refused {
  const { before } = meant;
  if (before.kind === 'yard') return { kind: 'yard', yardSpot: before.yardSpot ?? undefined };
  return bayStay(rows, at, meant, input.bayId ?? before.bayId ?? '', input.spot);
}

function isUnchanged(before: Row<'place'>, to: Standing, span: Span): boolean {
  const sameTimes = before.fromAt === span.fromAt && before.toAt === span.toAt;
  return sameTimes && (to.kind === 'yard' || (to.bayId === before.bayId && to.spot === before.spot));
}
