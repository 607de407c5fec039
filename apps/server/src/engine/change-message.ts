/** The wire text of a change for each audience, made once, when it is decided; and which reads it touches. */
import type { Audience, BoardDifference } from '@holdfast/board';
import type { Circumstances, Edit, TableName } from '@holdfast/domain';
import type { Sent } from './ports.js';

const hintsByTable: Readonly<Partial<Record<TableName, string>>> = {
  partLine: 'parts',
  partsOrder: 'parts',
  dueIn: 'parts',
  arrival: 'parts',
  delivery: 'parts',
  temporaryFix: 'outstanding',
  followUp: 'outstanding',
  secondCheck: 'outstanding',
  customer: 'customers',
  contact: 'customers',
  standingGoAhead: 'customers',
  clock: 'bay-time',
  spotUse: 'bay-time',
  hold: 'bay-time',
  openingHours: 'bay-time',
  baySpec: 'bay-time',
  bay: 'shop',
  person: 'shop',
  personSkill: 'shop',
  personHours: 'shop',
  supplier: 'shop',
  season: 'shop',
  shop: 'shop',
  shopSetting: 'shop',
  importBatch: 'imports',
  shopZone: 'bay-time',
  hoursException: 'bay-time',
  outage: 'bay-time',
  liftInspection: 'shop',
  liftDecision: 'shop',
};

/** What an accepted file brings beside the rows of its change. */
const ofFiles = ['customers', 'outstanding'];

export interface Subjects {
  readonly job: readonly string[];
  readonly vehicle: readonly string[];
  readonly bay: readonly string[];
  readonly hints: readonly string[];
}

/** Ids of the jobs, vehicles and bays that a change is about, and the kinds of read that it makes stale. */
export function subjectsOf(edits: readonly Edit[]): Subjects {
  const sets = { job: new Set<string>(), vehicle: new Set<string>(), bay: new Set<string>(), hints: new Set<string>() };
  for (const { table, after } of edits) {
    const row = after as { id: string; jobId?: string | null; vehicleId?: string | null; bayId?: string | null };
    if (table === 'job' || table === 'vehicle' || table === 'bay') sets[table].add(row.id);
    if (row.jobId) sets.job.add(row.jobId);
    if (row.vehicleId) sets.vehicle.add(row.vehicleId);
    if (row.bayId) sets.bay.add(row.bayId);
    const hint = hintsByTable[table];
    if (hint) sets.hints.add(hint);
    if (table === 'importBatch') for (const stale of ofFiles) sets.hints.add(stale);
  }
  return { job: [...sets.job], vehicle: [...sets.vehicle], bay: [...sets.bay], hints: [...sets.hints] };
}

export interface ChangeFacts {
  readonly seq: number;
  readonly sent: Sent;
  readonly at: Circumstances;
  readonly subjects: Subjects;
  readonly differences: Readonly<Record<Audience, BoardDifference>>;
}

export function changeMessages({
  seq,
  sent,
  at,
  subjects,
  differences,
}: ChangeFacts): Readonly<Record<Audience, string>> {
  const touched = [
    ...subjects.job.map((id) => `job:${id}`),
    ...subjects.vehicle.map((id) => `vehicle:${id}`),
    ...subjects.hints,
  ];
  const head = { seq, at: new Date(at.now).toISOString(), command: sent.name, touched };
  return {
    staff: JSON.stringify({ ...head, by: at.by.personId, ...differences.staff }),
    wall: JSON.stringify({ ...head, by: null, ...differences.wall }),
  };
}
