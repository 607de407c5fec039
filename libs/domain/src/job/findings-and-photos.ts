import type { AttachPhoto } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

/**
 * A fact, also when it reaches the server after the vehicle has left. The folded place finds the earlier finding at the
 * same place again. A measurement is a decimal in the unit beside it; one without a unit says nothing and is refused.
 */
export const addFinding: CommandRule<'addFinding'> = {
  needs: (input) => ({
    jobs: [input.jobId],
    tables: ['concern', 'finding'],
    ...(input.concernId === undefined ? {} : { concerns: [input.concernId] }),
  }),
  decide: (rows, input, at) => {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    if (rows.find('finding', input.findingId)) {
      return refuse('finding.alreadyThere', { findingId: input.findingId ?? null });
    }
    const missing = absent(rows, { concern: input.concernId });
    if (missing) return missing;
    const concern = rows.find('concern', input.concernId);
    if (concern && concern.jobId !== job.id) return refuse('finding.concernOfOtherJob', { concernId: concern.id });
    if (input.measure !== undefined && input.unit === undefined) return refuse('finding.unitMissing');
    const findingId = input.findingId ?? at.newId();
    rows.add('finding', {
      id: findingId,
      ...recordedBy(at),
      jobId: job.id,
      vehicleId: job.vehicleId,
      concernId: input.concernId ?? null,
      place: input.place,
      placeKey: foldKey(input.place),
      kind: input.kind,
      words: input.words ?? null,
      measure: input.measure === undefined ? null : canonical(input.measure),
      unit: input.unit ?? null,
    });
    return { facts: { jobId: job.id, findingId, kind: input.kind }, created: { finding: findingId } };
  },
};

function ofOtherVehicle(rows: Rows, input: AttachPhoto, job: Row<'job'>): Refused | null {
  const finding = rows.find('finding', input.findingId);
  if (finding && finding.jobId !== job.id) return refuse('photo.ofOtherVehicle', { table: 'finding', id: finding.id });
  const fix = rows.find('temporaryFix', input.temporaryFixId);
  if (fix && fix.vehicleId !== job.vehicleId) {
    return refuse('photo.ofOtherVehicle', { table: 'temporaryFix', id: fix.id });
  }
  return null;
}

/** A fact: an image that was uploaded before, named by its content, belongs to a job. Sizes in pixels. */
export const attachPhoto: CommandRule<'attachPhoto'> = {
  needs: (input) => ({
    jobs: [input.jobId],
    tables: ['finding', 'photo', 'temporaryFix'],
    ...(input.temporaryFixId === undefined ? {} : { fixes: [input.temporaryFixId] }),
  }),
  decide: (rows, input, at) => {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    if (rows.find('photo', input.photoId)) return refuse('photo.alreadyThere', { photoId: input.photoId ?? null });
    const missing = absent(rows, { finding: input.findingId, temporaryFix: input.temporaryFixId });
    if (missing) return missing;
    const elsewhere = ofOtherVehicle(rows, input, job);
    if (elsewhere) return elsewhere;
    const photoId = input.photoId ?? at.newId();
    const moment = input.moment ?? 'other';
    rows.add('photo', {
      id: photoId,
      ...recordedBy(at),
      jobId: job.id,
      vehicleId: job.vehicleId,
      findingId: input.findingId ?? null,
      temporaryFixId: input.temporaryFixId ?? null,
      content: input.content,
      width: input.width,
      height: input.height,
      caption: input.caption ?? null,
      moment,
      showsPeople: input.showsPeople ?? false,
    });
    return { facts: { jobId: job.id, photoId, moment }, created: { photo: photoId } };
  },
};
