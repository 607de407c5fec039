import { type Ender, enders } from '../cautions/caution-table.js';
import { flagHotWork } from '../cautions/hot-work-near.js';
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

const isFireRisk = (code: AddCaution['code']): boolean => code === 'fuelOpen' || code === 'hotWork';

/** A fact by anybody of the shop. A working caution belongs to the visit, a standing one stays with the vehicle. */
export const addCaution: CommandRule<'addCaution'> = {
  needs: (input) => ({
    vehicles: [input.vehicleId],
    hotWork: isFireRisk(input.code),
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
    if (isFireRisk(code)) flagHotWork(rows, at, { jobId, vehicleId });
    return { facts: { cautionId, vehicleId, jobId, standing, code }, created: { caution: cautionId } };
  },
};

function refusedMending(rows: Rows, caution: Row<'caution'>, lineId: string): Refused | null {
  const line = rows.get('workLine', lineId);
  if (line.vehicleId !== caution.vehicleId) return refuse('caution.lineOfOtherVehicle', { lineId });
  return line.progress === 'done' ? null : refuse('caution.lineNotDone', { lineId, title: line.title });
}

type Ending = Pick<EndCaution, 'words' | 'lineId'>;

/** Whether somebody is one of those whom the table lets end the caution. */
function isEnder(ender: Ender, caution: Row<'caution'>, by: Circumstances['by'], { words, lineId }: Ending): boolean {
  switch (ender) {
    case 'opener':
      return by.personId !== null && by.personId === caution.openedById;
    case 'second':
      return by.personId !== null && by.personId === caution.secondId;
    case 'lead':
      return isLead(by);
    case 'leadWithWords':
      return isLead(by) && words !== undefined;
    case 'mendingLine':
      return lineId !== undefined && (isLead(by) || hasRole(by, 'technician'));
  }
}

function refusedEnding(rows: Rows, input: Ending, by: Circumstances['by'], caution: Row<'caution'>): Refused | null {
  const { id: cautionId, code, standing } = caution;
  const ender = enders[standing ? 'standing' : 'working'].find((one) => isEnder(one, caution, by, input));
  if (standing && input.lineId !== undefined && ender) return refusedMending(rows, caution, input.lineId);
  if (ender) return null;
  if (!standing) return refuse('caution.notYours', { cautionId, code }, { table: 'caution', id: cautionId });
  return isLead(by) ? refuse('caution.wordsMissing', { cautionId }) : refuse('caution.standing', { cautionId, code });
}

/** A turn on the caution. Who may end it depends on whether it is a working or a standing one. */
export const endCaution: CommandRule<'endCaution'> = {
  needs: (input) => ({
    cautions: [input.cautionId],
    ...(input.lineId === undefined ? {} : { lines: [input.lineId] }),
  }),
  decide: (rows, input, at) => {
    const caution = live(rows, 'caution', input.cautionId);
    if (!caution) return notThere('caution', input.cautionId);
    const { id: cautionId, vehicleId, standing, code } = caution;
    if (caution.endedAt !== null) return refuse('caution.ended', { cautionId });
    const missing = absent(rows, { workLine: input.lineId });
    if (missing) return missing;
    const refused = refusedEnding(rows, input, at.by, caution);
    if (refused) return refused;
    rows.change('caution', cautionId, {
      endedAt: Math.max(at.effectiveAt, caution.effectiveAt),
      endedById: at.by.personId,
      endWords: input.words ?? null,
    });
    return { facts: { cautionId, vehicleId, standing, code, lineId: input.lineId ?? null } };
  },
};
