/** What check-in and booking share: how a visit comes into being. */
import type { Concerned } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { absent } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { promisedTooEarly } from './promised-time.js';

const jobCounter = 'job';

export interface SaidOfVisit {
  readonly jobId?: string | undefined;
  readonly vehicleId: string;
  readonly kind?: Row<'job'>['kind'] | undefined;
  readonly comebackOfLineId?: string | undefined;
  readonly promisedAt?: number | undefined;
}

export function kindOf(input: Pick<SaidOfVisit, 'kind' | 'comebackOfLineId'>): Row<'job'>['kind'] {
  return input.kind ?? (input.comebackOfLineId === undefined ? 'normal' : 'comeback');
}

/** Why there can be no such visit, whoever brings the vehicle and whenever. */
export function refusedVisit(rows: Rows, input: SaidOfVisit, at: Circumstances): Refused | null {
  const { jobId, vehicleId, comebackOfLineId } = input;
  if (rows.find('job', jobId)) return refuse('job.alreadyThere', { jobId: jobId ?? null });
  if (kindOf(input) === 'comeback' && comebackOfLineId === undefined) return refuse('job.comebackLineMissing');
  const missing = absent(rows, { workLine: comebackOfLineId });
  if (missing) return missing;
  const line = rows.find('workLine', comebackOfLineId);
  if (line && line.vehicleId !== vehicleId) return refuse('job.comebackOfOtherVehicle', { lineId: line.id });
  return promisedTooEarly(input.promisedAt, at);
}

/** The next number of the shop. The counter stands at the last number given. */
export function nextNumber(rows: Rows, at: Circumstances): number {
  const counter = rows.list('counter', (one) => one.name === jobCounter)[0];
  if (!counter) return rows.add('counter', { id: at.newId(), name: jobCounter, value: 1 }).value;
  return rows.change('counter', counter.id, { value: counter.value + 1 }).value;
}

/** After those that the visit has already. */
export function addConcerns(
  rows: Rows,
  at: Circumstances,
  jobId: string,
  concerns: readonly Concerned[],
): Refused | null {
  const last = Math.max(0, ...rows.list('concern', (one) => one.jobId === jobId).map((one) => one.position));
  for (const [index, { concernId, words, conditions }] of concerns.entries()) {
    if (rows.find('concern', concernId)) return refuse('concern.alreadyThere', { concernId: concernId ?? null });
    rows.add('concern', {
      id: concernId ?? at.newId(),
      ...recordedBy(at),
      jobId,
      position: last + index + 1,
      words,
      conditions: conditions ?? null,
      outcome: null,
      outcomeConditions: null,
      outcomeWords: null,
      outcomeAt: null,
      outcomeById: null,
    });
  }
  return null;
}

/** A visit with nothing on it yet; what is known of it is laid over. */
export function emptyVisit(rows: Rows, at: Circumstances, input: SaidOfVisit) {
  return {
    id: input.jobId ?? at.newId(),
    ...recordedBy(at),
    number: nextNumber(rows, at),
    vehicleId: input.vehicleId,
    kind: kindOf(input),
    comebackOfLineId: input.comebackOfLineId ?? null,
    expectedAt: null,
    arrivedAt: null,
    checkedInAt: null,
    promisedAt: input.promisedAt ?? null,
    waitsHere: false,
    keyTag: null,
    boardNote: null,
    odometerIn: null,
    odometerOut: null,
    storedHere: false,
    endedAt: null,
    endedHow: null,
    endWords: null,
    leftBy: null,
  } as const;
}
