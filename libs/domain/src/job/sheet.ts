/**
 * The hand-back sheet: concern – cause – correction, what is temporary until when, what was not looked at, what was put
 * off or declined. It states what was recorded and who signed, and never that a vehicle is safe or legal (rule 7). It is
 * frozen as it was shown, so names and words stand in it as they were; instants are ISO 8601 in UTC, days are of the
 * shop's zone, distances and readings in the unit beside them.
 */
import type { By } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import type { Row } from '../tables/tables.js';

export interface SheetLimits {
  readonly beforeDay: string | null;
  readonly beforeOdometer: number | null;
  readonly withinDistance: number | null;
  readonly withinDays: number | null;
  readonly season: string | null;
  readonly distanceUnit: Row<'followUp'>['distanceUnit'];
}
export type SheetFinding = Pick<Row<'finding'>, 'place' | 'kind' | 'words' | 'measure' | 'unit'>;
export interface SheetWork {
  readonly title: string;
  readonly words: string | null;
}
export interface SheetConcern extends Pick<
  Row<'concern'>,
  'words' | 'conditions' | 'outcome' | 'outcomeConditions' | 'outcomeWords'
> {
  /** What was found about it, and what was done about it. */
  readonly causes: readonly SheetFinding[];
  readonly corrections: readonly SheetWork[];
}
export interface SheetFix
  extends SheetLimits, Pick<Row<'temporaryFix'>, 'kind' | 'standsInFor' | 'place' | 'heldWith' | 'system' | 'state'> {
  readonly since: string;
  readonly endedByWhat: string;
  readonly removedPieceAt: string | null;
  readonly secondChecks: readonly { readonly by: string; readonly at: string; readonly samePerson: boolean }[];
  /** Tier 1 by road: who allowed it, with which words, and that the receiver signed for it. */
  readonly byRoad: { readonly allowedBy: string; readonly words: string; readonly receiverSigned: boolean } | null;
}
export interface SheetContent {
  readonly shop: string;
  readonly jobNumber: number;
  readonly vehicle: Pick<Row<'vehicle'>, 'plate' | 'vin' | 'description'>;
  readonly customer: string | null;
  readonly checkedInAt: string;
  readonly leftAt: string;
  readonly odometer: Pick<Row<'job'>, 'odometerIn' | 'odometerOut' | 'odometerUnit'>;
  readonly concerns: readonly SheetConcern[];
  /** Work and findings that belong to no concern. */
  readonly otherWork: readonly SheetWork[];
  readonly otherFindings: readonly SheetFinding[];
  readonly partsFitted: readonly Pick<Row<'partLine'>, 'number' | 'description' | 'fitted' | 'unit'>[];
  readonly temporary: readonly SheetFix[];
  /** Lines that were not done, or not to the end, and why. */
  readonly putOff: readonly {
    readonly title: string;
    readonly why: 'deferred' | 'declined' | 'carriedOver' | 'dropped' | 'later';
    readonly words: string | null;
  }[];
  readonly notLookedAt: readonly { readonly what: string; readonly why: string | null }[];
  readonly followUps: readonly (SheetLimits & Pick<Row<'followUp'>, 'kind' | 'title' | 'words' | 'urgency'>)[];
  /** Cautions that stay with the vehicle. */
  readonly cautions: readonly Pick<Row<'caution'>, 'code' | 'words'>[];
  readonly leavesBy: Row<'sheet'>['leavesBy'];
  readonly receivedBy: string;
  readonly receivedHow: Row<'sheet'>['receivedHow'];
  readonly handedBackBy: string;
}

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

function concernsOf(
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
      causes: findings.filter((one) => one.concernId === concern.id).map(asFinding),
      corrections: done.filter((line) => line.concernId === concern.id).map(asWork),
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
  const cautions = rows.list('caution', (one) => one.vehicleId === vehicleId && one.standing && one.endedAt === null);
  return {
    temporary: fixes.map((fix) => fixOf(rows, fix, byRoad)),
    followUps: followUps.map((one) => {
      const { kind, title, words, urgency } = one;
      return { kind, title, words, urgency, ...limits(rows, one) };
    }),
    cautions: cautions.map(({ code, words }) => ({ code, words })),
  };
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
  const { by, leavesBy, receivedBy, receivedHow } = leaving;
  return {
    shop: rows.list('shop')[0]?.name ?? '',
    jobNumber: job.number,
    vehicle: { plate, vin, description },
    customer: rows.find('customer', job.customerId)?.name ?? null,
    checkedInAt: iso(job.checkedInAt),
    leftAt: iso(job.endedAt ?? job.checkedInAt),
    odometer: { odometerIn, odometerOut, odometerUnit },
    concerns: concernsOf(concerns, findings, done),
    otherWork: done.filter((line) => line.concernId === null).map(asWork),
    otherFindings: findings.filter((one) => one.concernId === null).map(asFinding),
    partsFitted: fitted.map((part) => ({
      number: part.number,
      description: part.description,
      fitted: part.fitted,
      unit: part.unit,
    })),
    ...staysOn(rows, job.vehicleId, leavesBy === 'road'),
    putOff: putOffOf(lines),
    notLookedAt: notLookedAt(concerns, findings),
    leavesBy,
    receivedBy,
    receivedHow,
    handedBackBy: by.name,
  };
}
