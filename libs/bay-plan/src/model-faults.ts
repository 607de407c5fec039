/** What makes a model one that cannot be planned, in codes and facts. An empty list: it can. */
import { choiceFaults, clashFaults, keptFaults } from './fixed-choice-faults.js';
import { withAllBefore } from './line-options.js';
import type { FaultSink, ModelFault } from './model-fault.js';
import type { PlanJob, PlanLine, PlanModel } from './model.js';
import { standFaults } from './stand-faults.js';

function idFaults(model: PlanModel, add: FaultSink): void {
  const twice = (ids: readonly string[]) => {
    const seen = new Set<string>();
    for (const id of ids) {
      if (seen.has(id)) add({ code: 'sameIdTwice', id });
      seen.add(id);
    }
  };
  twice(model.spots.map((spot) => spot.spotId));
  twice(model.people.map((person) => person.personId));
  twice(model.jobs.map((job) => job.jobId));
  for (const job of model.jobs) twice(job.lines.map((line) => line.lineId));
}

function lineFaults(job: PlanJob, line: PlanLine, add: FaultSink): void {
  const { lineId, sublet } = line;
  const whole = (minutes: number) => Number.isInteger(minutes) && minutes >= 1;
  const minutes = [line.workMinutes, ...Object.values(line.minutesBySpot ?? {})];
  if (!minutes.every(whole)) add({ code: 'noWholeMinutes', lineId });
  const known = new Set(job.lines.map((one) => one.lineId));
  for (const id of [...line.after, ...(line.keepsBayUntil === null ? [] : [line.keepsBayUntil])]) {
    if (!known.has(id)) add({ code: 'unknownId', id, lineId });
  }
  if (line.after.some((id) => withAllBefore(job, id).has(lineId))) {
    add({ code: 'linesInACircle', jobId: job.jobId, lineId });
  }
  if (sublet?.slots.length === 0) add({ code: 'noSlots', lineId });
}

export function faultsInModel(model: PlanModel): readonly ModelFault[] {
  const faults: ModelFault[] = [];
  const add: FaultSink = (fault) => faults.push(fault);
  if (!(model.horizon > model.now)) add({ code: 'horizonInThePast' });
  if (!(model.freeShare >= 0 && model.freeShare < 1)) add({ code: 'badShare', freeShare: model.freeShare });
  idFaults(model, add);
  for (const job of model.jobs) {
    if (!Number.isInteger(job.weight) || job.weight < 0) add({ code: 'badWeight', jobId: job.jobId });
    for (const line of job.lines) {
      lineFaults(job, line, add);
      choiceFaults(model, job, line, add);
    }
  }
  standFaults(model, add);
  for (const job of model.jobs) keptFaults(job, add);
  clashFaults(model, add);
  return faults;
}
