import type { AddCaution, EndCaution } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { hasRole, isLead } from '../questions/people-and-shop.js';
import { live, openJobOf } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

function refusedCaution(rows: Rows, input: AddCaution): Refused | null {
  const { cautionId, vehicleId, jobId, secondId } = input;
  if (rows.find('caution', cautionId)) return refuse('caution.alreadyThere', { cautionId: cautionId ?? null });
  const missing = absent(rows, { vehicle: vehicleId, job: jobId, person: secondId });
  if (missing) return missing;
  const job = rows.find('job', jobId);
  if (job && job.vehicleId !== vehicleId) return refuse('caution.jobOfOtherVehicle', { jobId: job.id });
  if (input.code === 'other' && input.words === undefined) return refuse('caution.saySomething');
  const ofVisit = job ?? openJobOf(rows, vehicleId);
  return input.standing || ofVisit ? null : refuse('caution.noVisit', { vehicleId });
}

/** A fact by anybody of the shop. A working caution belongs to the visit, a standing one stays with the vehicle. */
export const addCaution: CommandRule<'addCaution'> = {
  needs: (input) => ({
    vehicles: [input.vehicleId],
    tables: ['caution'],
    ...(input.jobId === undefined ? {} : { jobs: [input.jobId] }),
  }),
  decide: (rows, input, at) => {
    const refused = refusedCaution(rows, input);
    if (refused) return refused;
    const { vehicleId, standing, code } = input;
    const openedById = at.by.personId;
    if (openedById === null) throw new Error('a caution is added by a person');
    const jobId = input.jobId ?? openJobOf(rows, vehicleId)?.id ?? null;
    const cautionId = input.cautionId ?? at.newId();
    rows.add('caution', {
      id: cautionId,
      ...recordedBy(at),
      vehicleId,
      jobId,
      standing,
      code,
      words: input.words ?? null,
      secondId: input.secondId ?? null,
      openedById,
      endedAt: null,
      endedById: null,
      endWords: null,
    });
    return { facts: { cautionId, vehicleId, jobId, standing, code }, created: { caution: cautionId } };
  },
};

function refusedMending(rows: Rows, caution: Row<'caution'>, lineId: string): Refused | null {
  const line = rows.get('workLine', lineId);
  if (line.vehicleId !== caution.vehicleId) return refuse('caution.lineOfOtherVehicle', { lineId });
  return line.progress === 'done' ? null : refuse('caution.lineNotDone', { lineId, title: line.title });
}

/** Owner and manager with words; anybody of the floor with the done line that mended it. */
function refusedStanding(
  rows: Rows,
  input: EndCaution,
  by: Circumstances['by'],
  caution: Row<'caution'>,
): Refused | null {
  const { id: cautionId, code } = caution;
  if (input.lineId !== undefined && (isLead(by) || hasRole(by, 'technician'))) {
    return refusedMending(rows, caution, input.lineId);
  }
  if (!isLead(by)) return refuse('caution.standing', { cautionId, code });
  return input.words === undefined ? refuse('caution.wordsMissing', { cautionId }) : null;
}

/** Who opened it, the second person named with it, or owner or manager. */
function refusedWorking(by: Circumstances['by'], caution: Row<'caution'>): Refused | null {
  const own = by.personId !== null && [caution.openedById, caution.secondId].includes(by.personId);
  if (own || isLead(by)) return null;
  const way = { table: 'caution', id: caution.id };
  return refuse('caution.notYours', { cautionId: caution.id, code: caution.code }, way);
}

/** A turn on the caution. Who may end it depends on whether it is a working or a standing one. */
export const endCaution: CommandRule<'endCaution'> = {
  needs: (input) => ({
    cautions: [input.cautionId],
    tables: ['caution', 'workLine'],
    ...(input.lineId === undefined ? {} : { lines: [input.lineId] }),
  }),
  decide: (rows, input, at) => {
    const caution = live(rows, 'caution', input.cautionId);
    if (!caution) return notThere('caution', input.cautionId);
    const { id: cautionId, vehicleId, standing, code } = caution;
    if (caution.endedAt !== null) return refuse('caution.ended', { cautionId });
    const missing = absent(rows, { workLine: input.lineId });
    if (missing) return missing;
    const refused = standing ? refusedStanding(rows, input, at.by, caution) : refusedWorking(at.by, caution);
    if (refused) return refused;
    rows.change('caution', cautionId, {
      endedAt: Math.max(at.effectiveAt, caution.effectiveAt),
      endedById: at.by.personId,
      endWords: input.words ?? null,
    });
    return { facts: { cautionId, vehicleId, standing, code, lineId: input.lineId ?? null } };
  },
};
