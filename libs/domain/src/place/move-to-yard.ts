/** A vehicle stands in the yard: a fact. */
import { Refused, refuse } from '../kernel/refusal.js';
import type { CommandRule } from '../kernel/family.js';
import { placesOfVehicle } from '../timeline/lanes.js';
import { contestedReport, settledReport } from '../timeline/reports.js';
import { earliest } from '../timeline/timeline.js';
import { flagMove, moveVehicle, standingTables } from './move-vehicle.js';
import { visitOf } from '../questions/visit.js';

export const moveToYard: CommandRule<'moveToYard'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables: standingTables }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    if (input.placeId !== undefined && rows.find('place', input.placeId)) {
      return refuse('place.alreadyRecorded', { id: input.placeId });
    }
    const { job, vehicle } = visit;
    const from = earliest(placesOfVehicle(rows, vehicle.id), at.effectiveAt);
    const said = { kind: 'moveToYard', jobId: job.id, vehicleId: vehicle.id, said: input, happenedAt: from } as const;
    const facts = { jobId: job.id, jobNumber: job.number, vehicleId: vehicle.id };
    flagMove(rows, at, visit, input);
    if (job.endedAt !== null) {
      const report = contestedReport(rows, at, said, []);
      return { facts: { ...facts, contested: true }, created: { report: report.id } };
    }
    const place = moveVehicle(rows, at, visit, { ...input, kind: 'yard' }, from);
    const report = settledReport(rows, at, said);
    return { facts: { ...facts, contested: false }, created: { place: place.id, report: report.id } };
  },
};
