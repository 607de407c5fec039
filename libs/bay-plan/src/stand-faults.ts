/** What makes a model unplannable in where its vehicles stand and until when they have to. */
import type { FaultSink } from './model-fault.js';
import type { PlanJob, PlanLine, PlanModel } from './model.js';

/** Whether nobody else can have the spot until lines of the job are done. */
const staysForLines = (job: PlanJob) => {
  const until = job.stands?.staysUntil ?? null;
  return until !== null && (until === 'done' || 'lineId' in until);
};

/** Whether the vehicle has to stay where it is beyond the instant, as far as an instant is known. */
const staysBeyond = (job: PlanJob, at: number) => {
  const until = job.stands?.staysUntil ?? null;
  return until !== null && until !== 'done' && 'at' in until && at < until.at;
};

/** The last vehicle that stands in each spot. */
function standing(model: PlanModel, add: FaultSink): ReadonlyMap<string, PlanJob> {
  const stays = new Map<string, PlanJob>();
  for (const job of model.jobs) {
    if (job.stands === null) continue;
    const { spotId, staysUntil } = job.stands;
    if (!model.spots.some((spot) => spot.spotId === spotId)) add({ code: 'unknownId', id: spotId });
    if (stays.has(spotId)) add({ code: 'twoVehiclesInOneSpot', spotId });
    stays.set(spotId, job);
    if (staysUntil === null || staysUntil === 'done' || 'at' in staysUntil) continue;
    if (!job.lines.some((line) => line.lineId === staysUntil.lineId)) add({ code: 'unknownId', id: staysUntil.lineId });
  }
  return stays;
}

function fixedSpotFaults(stays: ReadonlyMap<string, PlanJob>, job: PlanJob, line: PlanLine, add: FaultSink): void {
  const spotId = line.fixed?.spotId;
  if (spotId === undefined) return;
  const there = stays.get(spotId);
  const startsAt = line.fixed?.startsAt ?? Infinity;
  if (there !== undefined && there !== job && (staysForLines(there) || staysBeyond(there, startsAt))) {
    add({ code: 'fixedSpotWhereAnotherStays', lineId: line.lineId, spotId });
  }
  const bound = job.stands !== null && job.stands.spotId !== spotId && staysForLines(job);
  if (bound) add({ code: 'fixedSpotOtherThanWhereItStays', lineId: line.lineId, spotId });
}

export function standFaults(model: PlanModel, add: FaultSink): void {
  const stays = standing(model, add);
  for (const job of model.jobs) for (const line of job.lines) fixedSpotFaults(stays, job, line, add);
}
