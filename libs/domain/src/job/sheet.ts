/**
 * The hand-back sheet: concern – cause – correction, what is temporary until when, what was not looked at, what was put
 * off or declined. It states what was recorded and who signed, and never that a vehicle is safe or legal (rule 7). It is
 * frozen as it was shown, so names and words stand in it as they were; instants are ISO 8601 in UTC, days are of the
 * shop's zone, distances and readings in the unit beside them.
 */
import type { By } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { isOff, wheelsNow } from '../questions/wheels.js';
import type { Row } from '../tables/tables.js';
import type {
  SheetAttempt,
  SheetCause,
  SheetConcern,
  SheetContent,
  SheetFinding,
  SheetFix,
  SheetLimits,
  SheetSublet,
  SheetWheel,
  SheetWork,
} from './sheet-content.js';

const iso = (instant: number): string => new Date(instant).toISOString();

type LimitColumns = Pick<
  Row<'followUp'>,
  'beforeDay' | 'beforeOdometer' | 'withinDistance' | 'withinDays' | 'seasonId' | 'distanceUnit'
>;

function limits(rows: Rows, row: LimitColumns): SheetLimits {
  const { beforeDay, beforeOdometer, withinDistance, withinDays, distanceUnit } = row;
  const season = rows.find('season', row.seasonId)?.name ?? null;
  return { beforeDay, beforeOdometer, withinDistance, withinDays, season, distanceUnit };
}

function nameOf(rows: Rows, personId: string | null): string {
  return rows.find('person', personId)?.name ?? '';
}

const asFinding = ({ place, kind, words, measure, unit }: Row<'finding'>): SheetFinding => ({
  place,
  kind,
  words,
  measure,
  unit,
});

const asWork = ({ title, endWords }: Row<'workLine'>): SheetWork => ({ title, words: endWords });

const byPosition = (a: { readonly position: number }, b: { readonly position: number }): number =>
  a.position - b.position;

function attemptsOf(rows: Rows, concernId: string): SheetAttempt[] {
  const attempts = rows.list('attempt', (one) => one.concernId === concernId);
  return attempts
    .sort((a, b) => a.effectiveAt - b.effectiveAt)
    .map(({ conditions, appeared, odometer, odometerUnit, words, effectiveAt, byId }) => ({
      ...{ conditions, appeared, odometer, odometerUnit, words },
      at: iso(effectiveAt),
      by: nameOf(rows, byId),
    }));
}

function causesOf(rows: Rows, concernId: string): SheetCause[] {
  return rows
    .list('causeConcern', (one) => one.concernId === concernId)
    .flatMap((one) => live(rows, 'cause', one.causeId) ?? [])
    .map(({ words, certainty }) => ({ words, certainty }));
}

/** Work on a concern: told to be for it, or for a cause that it shares. */
function isFor(rows: Rows, line: Row<'workLine'>, concernId: string): boolean {
  const shared = rows.list('causeConcern', (one) => one.causeId === line.causeId && one.concernId === concernId);
  return line.concernId === concernId || (line.causeId !== null && shared.length > 0);
}

function concernsOf(
  rows: Rows,
  concerns: readonly Row<'concern'>[],
  findings: readonly Row<'finding'>[],
  done: readonly Row<'workLine'>[],
): SheetConcern[] {
  return concerns.map((concern) => {
    const { words, conditions, outcome, outcomeConditions, outcomeWords } = concern;
    return {
      words,
      conditions,
      outcome,
      outcomeConditions,
      outcomeWords,
      attempts: attemptsOf(rows, concern.id),
      knownCauses: causesOf(rows, concern.id),
      causes: findings.filter((one) => one.concernId === concern.id).map(asFinding),
      corrections: done.filter((line) => isFor(rows, line, concern.id)).map(asWork),
    };
  });
}

function fixOf(rows: Rows, fix: Row<'temporaryFix'>, byRoad: boolean): SheetFix {
  const { kind, standsInFor, place, heldWith, system, state, endedByWhat, removedPieceAt } = fix;
  const checks = rows.list('secondCheck', (one) => one.temporaryFixId === fix.id);
  const allowed = byRoad && fix.roadAllowedById !== null;
  return {
    ...{ kind, standsInFor, place, heldWith, system, state, endedByWhat, removedPieceAt },
    since: iso(fix.since),
    ...limits(rows, fix),
    secondChecks: checks.map(({ personId, effectiveAt, samePerson }) => ({
      by: nameOf(rows, personId),
      at: iso(effectiveAt),
      samePerson,
    })),
    byRoad: allowed
      ? {
          allowedBy: nameOf(rows, fix.roadAllowedById),
          words: fix.roadAllowedWords ?? '',
          receiverSigned: fix.receiverSigned,
        }
      : null,
  };
}

/** Why a line was not done, or not to the end; null for one that was. */
function whyPutOff(line: Row<'workLine'>): SheetContent['putOff'][number]['why'] | null {
  switch (line.progress) {
    case 'done':
      return null;
    case 'carriedOver':
    case 'dropped':
      return line.progress;
    case 'planned':
    case 'started':
    case 'stopped':
      return line.goAhead === 'deferred' || line.goAhead === 'declined' ? line.goAhead : 'later';
  }
}

function putOffOf(lines: readonly Row<'workLine'>[]): SheetContent['putOff'] {
  return lines.flatMap((line) => {
    const why = whyPutOff(line);
    return why === null ? [] : [{ title: line.title, why, words: line.endWords }];
  });
}

function notLookedAt(
  concerns: readonly Row<'concern'>[],
  findings: readonly Row<'finding'>[],
): SheetContent['notLookedAt'] {
  const untried = concerns.filter((one) => one.outcome === 'notTried');
  const unchecked = findings.filter((one) => one.kind === 'couldNotBeChecked');
  return [
    ...untried.map(({ words, outcomeWords }) => ({ what: words, why: outcomeWords })),
    ...unchecked.map(({ place, words }) => ({ what: place, why: words })),
  ];
}

/** What stays with the vehicle when it is gone. */
function staysOn(rows: Rows, vehicleId: string, byRoad: boolean) {
  const fixes = rows.list('temporaryFix', (fix) => fix.vehicleId === vehicleId && fix.state !== 'ended');
  const followUps = rows.list('followUp', (one) => one.vehicleId === vehicleId && one.state === 'open');
  const cautions = rows.list('caution', (one) => one.vehicleId === vehicleId && one.endedAt === null);
  return {
    temporary: fixes.map((fix) => fixOf(rows, fix, byRoad)),
    followUps: followUps.map((one) => {
      const { kind, title, words, urgency } = one;
      return { kind, title, words, urgency, ...limits(rows, one) };
    }),
    cautions: cautions.map(({ code, words, standing }) => ({ code, words, standing })),
  };
}

function wheelsOf(rows: Rows, jobId: string): SheetWheel[] {
  return wheelsNow(rows, jobId).map((wheel) => {
    const { position, torque, torqueUnit, torqueSource, sourceWords, tool, torquedById } = wheel;
    const recorded = { position, torque, torqueUnit, torqueSource, sourceWords, tool };
    return { ...recorded, isOn: !isOff(wheel), by: nameOf(rows, torquedById) };
  });
}

function subletsOf(rows: Rows, jobId: string): SheetSublet[] {
  const begun = rows.list('sublet', (one) => one.jobId === jobId && one.fromAt !== null && one.state !== 'cancelled');
  return begun.map(({ form, firm, component, state, lineId }) => ({
    ...{ form, firm, component, state },
    title: live(rows, 'workLine', lineId)?.title ?? null,
  }));
}

/** The sheet of a job that has just ended. */
export function sheetContent(
  rows: Rows,
  job: Row<'job'>,
  leaving: Pick<SheetContent, 'receivedBy' | 'receivedHow' | 'leavesBy'> & { readonly by: By },
): SheetContent {
  const { plate, vin, description } = rows.get('vehicle', job.vehicleId);
  const ofJob = (row: { readonly jobId: string }): boolean => row.jobId === job.id;
  const concerns = rows.list('concern', ofJob).sort(byPosition);
  const findings = rows.list('finding', ofJob);
  const lines = rows.list('workLine', ofJob).sort(byPosition);
  const done = lines.filter((line) => line.progress === 'done');
  const fitted = rows.list('partLine', (part) => {
    const line = live(rows, 'workLine', part.lineId);
    return line?.jobId === job.id && part.fitted !== '0';
  });
  const { odometerIn, odometerOut, odometerUnit } = job;
  const cameAt = job.checkedInAt ?? job.arrivedAt ?? job.recordedAt;
  const { by, leavesBy, receivedBy, receivedHow } = leaving;
  return {
    shop: rows.list('shop')[0]?.name ?? '',
    jobNumber: job.number,
    vehicle: { plate, vin, description },
    customer: rows.find('customer', job.customerId)?.name ?? null,
    checkedInAt: iso(cameAt),
    leftAt: iso(job.endedAt ?? cameAt),
    odometer: { odometerIn, odometerOut, odometerUnit },
    concerns: concernsOf(rows, concerns, findings, done),
    otherWork: done.filter((line) => !concerns.some(({ id }) => isFor(rows, line, id))).map(asWork),
    otherFindings: findings.filter((one) => one.concernId === null).map(asFinding),
    partsFitted: fitted.map((part) => ({
      number: part.number,
      description: part.description,
      fitted: part.fitted,
      unit: part.unit,
    })),
    ...staysOn(rows, job.vehicleId, leavesBy === 'road'),
    wheels: wheelsOf(rows, job.id),
    sublets: subletsOf(rows, job.id),
    putOff: putOffOf(lines),
    notLookedAt: notLookedAt(concerns, findings),
    leavesBy,
    receivedBy,
    receivedHow,
    handedBackBy: by.name,
    release: job.endedHow === 'released' ? { words: job.endWords ?? '', by: by.name } : null,
  };
}
