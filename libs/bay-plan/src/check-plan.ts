/**
 * Whether a plan can be carried out as it stands. It shares nothing with the solver but the words of model and plan: it
 * reads the finished plan against every rule by itself, plainly, and is run on every plan that is shown.
 */
import { checkStays } from './check-stays.js';
import { checkTimes } from './check-times.js';
import { recount } from './check-value.js';
import type { CheckedLine, PlanFault, PlanFaultCode, Report } from './checked-line.js';
import type { PlanJob, PlanLine, PlanModel, PlanSpot } from './model.js';
import type { Plan } from './plan.js';

function pairUp(model: PlanModel, plan: Plan, report: Report): CheckedLine[] {
  const out: CheckedLine[] = [];
  const seen = new Set<string>();
  const key = (jobId: string, lineId: string) => JSON.stringify([jobId, lineId]);
  for (const planned of plan.lines) {
    const job = model.jobs.find((one) => one.jobId === planned.jobId);
    const line = job?.lines.find((one) => one.lineId === planned.lineId);
    if (job === undefined || line === undefined) report('lineUnknown', planned.lineId);
    else if (seen.has(key(job.jobId, line.lineId))) report('lineTwice', line.lineId);
    else out.push({ planned, job, line });
    seen.add(key(planned.jobId, planned.lineId));
  }
  for (const one of plan.unplaced) {
    if (seen.has(key(one.jobId, one.lineId))) report('lineTwice', one.lineId);
    seen.add(key(one.jobId, one.lineId));
  }
  for (const job of model.jobs) {
    for (const line of job.lines) if (!seen.has(key(job.jobId, line.lineId))) report('lineMissing', line.lineId);
  }
  return out;
}

const within = (known: number | null, limit: number | null) => limit === null || (known ?? 0) <= limit;

function suits(spot: PlanSpot, job: PlanJob, line: PlanLine): boolean {
  return (
    line.equipment.every((word) => spot.equipment.includes(word)) &&
    within(job.massKg, spot.ratedKg) &&
    within(job.lengthMm, spot.longestMm) &&
    within(job.heightMm, spot.highestMm) &&
    (line.minutesBySpot === undefined || spot.spotId in line.minutesBySpot)
  );
}

function checkSpot(model: PlanModel, { planned, job, line }: CheckedLine, report: Report): void {
  const away = line.sublet?.vehicleGoes === true;
  if (planned.spotId === null || away) {
    if (!away) report('spotNeeded', line.lineId);
    else if (planned.spotId !== null) report('vehicleIsAway', line.lineId);
    return;
  }
  const spot = model.spots.find((one) => one.spotId === planned.spotId);
  if (spot === undefined) {
    report('spotUnknown', line.lineId, planned.spotId);
    return;
  }
  if (line.fixed?.spotId !== undefined) {
    if (line.fixed.spotId !== spot.spotId) report('fixedSpotNotKept', line.lineId, spot.spotId);
    return;
  }
  if (!suits(spot, job, line)) report('spotDoesNotSuit', line.lineId, spot.spotId);
}

function checkPeople(model: PlanModel, { planned, line }: CheckedLine, report: Report): void {
  const needed = line.sublet === null ? line.people : 0;
  const who = new Set(planned.personIds);
  if (who.size !== needed || planned.personIds.length !== needed) report('peopleNumber', line.lineId);
  for (const id of who) {
    const person = model.people.find((one) => one.personId === id);
    if (person === undefined) report('personUnknown', line.lineId, id);
    else if (line.fixed?.personIds !== undefined) {
      if (!line.fixed.personIds.includes(id)) report('fixedPeopleNotKept', line.lineId, id);
    } else if (line.skills.some((skill) => !person.skills.includes(skill))) report('skillMissing', line.lineId, id);
  }
}

/** Nothing is in two places at once. */
function checkTwice(lines: readonly CheckedLine[], report: Report): void {
  const users = new Map<string, CheckedLine[]>();
  const use = (kind: string, id: string, line: CheckedLine) => {
    const key = `${kind} ${id}`;
    users.set(key, [...(users.get(key) ?? []), line]);
  };
  for (const one of lines) {
    use('vehicleTwice', one.job.jobId, one);
    if (one.planned.spotId !== null) use('spotTwice', one.planned.spotId, one);
    for (const id of one.planned.personIds) use('personTwice', id, one);
    for (const id of one.line.toolIds) use('toolTwice', id, one);
  }
  for (const [key, list] of users) {
    const sorted = [...list].sort((a, b) => a.planned.from - b.planned.from || a.planned.to - b.planned.to);
    sorted.forEach((one, i) => {
      const next = sorted[i + 1];
      if (next === undefined || next.planned.from >= one.planned.to) return;
      report(key.slice(0, key.indexOf(' ')) as PlanFaultCode, next.line.lineId, one.line.lineId);
    });
  }
}

function checkTurns(lines: readonly CheckedLine[], report: Report): void {
  for (const { planned, job, line } of lines) {
    for (const id of line.after) {
      const first = lines.find((one) => one.job === job && one.line.lineId === id);
      if (first === undefined || first.planned.to > planned.from) report('beforeItsTurn', line.lineId, id);
    }
  }
}

function checkValue(model: PlanModel, plan: Plan, lines: readonly CheckedLine[], report: Report): void {
  const counted = recount(model, plan, lines);
  for (const name of Object.keys(counted) as (keyof typeof counted)[]) {
    if (Math.abs(counted[name] - plan.value[name]) > 0.01) report('valueWrong', null, name);
  }
}

/** What is wrong with the plan; nothing: it can be carried out and is worth what it says (`disturbedLines` left out). */
export function checkPlan(model: PlanModel, plan: Plan): readonly PlanFault[] {
  const faults: PlanFault[] = [];
  const report: Report = (code, lineId, other = null) => faults.push({ code, lineId, with: other });
  const lines = pairUp(model, plan, report);
  for (const one of lines) {
    checkSpot(model, one, report);
    checkPeople(model, one, report);
    checkTimes(model, one, report);
  }
  checkTwice(lines, report);
  checkTurns(lines, report);
  checkStays(model, lines, report);
  checkValue(model, plan, lines, report);
  return faults;
}
