/**
 * Wheels off, on and tightened, each by its place on the vehicle. Facts: recorded as somebody says, also where an earlier
 * step was never written down. What a missing torque record stops is ../cautions' business; nothing here computes or
 * proposes a torque, and every value names where it comes from.
 */
import type { RecordTorque, RecordWheelOff, RecordWheelOn, TorqueFacts } from '../inputs.js';
import { canonical, compare } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { NewRow, Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import { isOff, wheelsNow } from '../questions/wheels.js';
import type { Row } from '../tables/tables.js';
import { wheelPosition } from '../tables/words.js';

type Wheel = Row<'wheelRecord'>;

/** The visit whole: a torque record may be the last thing that a vehicle was not ready for. */
const needsWheels = (jobId: string) => ({ jobs: [jobId] });

/** The visit and each place once; a place that no vehicle has is no report. */
function wheelsSaid(rows: Rows, jobId: string, said: readonly string[]): (Visit & { positions: string[] }) | Refused {
  const visit = visitOf(rows, jobId);
  if (visit instanceof Refused) return visit;
  const unknown = said.find((position) => !wheelPosition.test(position));
  return unknown === undefined
    ? { ...visit, positions: [...new Set(said)] }
    : refuse('wheel.positionUnknown', { position: unknown });
}

/** A torque is above nought and says where it comes from. */
export function badTorque({ torque, torqueSource, sourceWords }: TorqueFacts): Refused | null {
  if (compare(torque, '0') <= 0) return refuse('wheel.torqueNotPositive', { torque });
  return torqueSource === 'other' && sourceWords === undefined ? refuse('wheel.sourceMissing') : null;
}

function torqued(said: TorqueFacts, at: Circumstances, notBefore: number) {
  return {
    torque: canonical(said.torque),
    torqueUnit: said.torqueUnit,
    torqueSource: said.torqueSource,
    sourceWords: said.sourceWords ?? null,
    tool: said.tool,
    torquedAt: Math.max(at.effectiveAt, notBefore),
    torquedById: at.by.personId,
  };
}

function blank(at: Circumstances, { job, vehicle }: Visit, position: string): NewRow<'wheelRecord'> {
  return {
    id: at.newId(),
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: vehicle.id,
    lineId: null,
    position,
    offAt: null,
    offById: null,
    onAt: null,
    onById: null,
    torque: null,
    torqueUnit: null,
    torqueSource: null,
    sourceWords: null,
    tool: null,
    torquedAt: null,
    torquedById: null,
  };
}

function nowAt(rows: Rows, jobId: string): ReadonlyMap<string, Wheel> {
  return new Map(wheelsNow(rows, jobId).map((wheel) => [wheel.position, wheel]));
}

function badWheelOff(rows: Rows, { jobId, lineId, wheelRecordId }: RecordWheelOff): Refused | null {
  if (wheelRecordId !== undefined && rows.find('wheelRecord', wheelRecordId)) {
    return refuse('work.alreadyRecorded', { table: 'wheelRecord', id: wheelRecordId });
  }
  if (lineId === undefined) return null;
  const line = live(rows, 'workLine', lineId);
  if (!line) return notThere('workLine', lineId);
  return line.jobId === jobId ? null : refuse('work.otherJob', { table: 'workLine', id: lineId });
}

/**
 * A new record for each wheel that is not off already. Told late, after the wheel was put on as one that nobody had
 * recorded off, it completes that record. `wheelRecordId` is the id of the first new one.
 */
export const recordWheelOff: CommandRule<'recordWheelOff'> = {
  needs: ({ jobId }) => needsWheels(jobId),
  decide(rows, input, at) {
    const said = wheelsSaid(rows, input.jobId, input.positions);
    if (said instanceof Refused) return said;
    const refused = badWheelOff(rows, input);
    if (refused) return refused;
    const before = nowAt(rows, input.jobId);
    let firstId = input.wheelRecordId;
    let first: string | undefined;
    const off = { offAt: at.effectiveAt, offById: at.by.personId, lineId: input.lineId ?? null };
    for (const position of said.positions) {
      const wheel = before.get(position);
      if (wheel && (isOff(wheel) || (wheel.onAt !== null && wheel.onAt >= at.effectiveAt))) {
        if (wheel.offAt === null) rows.change('wheelRecord', wheel.id, off);
        continue;
      }
      const row = blank(at, said, position);
      const added = rows.add('wheelRecord', { ...row, id: firstId ?? row.id, ...off });
      firstId = undefined;
      first ??= added.id;
    }
    const facts = { jobId: said.job.id, lineId: input.lineId ?? null, positions: said.positions.join(' ') };
    return { facts, ...(first === undefined ? {} : { created: { wheelRecord: first } }) };
  },
};

/** Closes the record of each wheel that is off. One that was never recorded off gets a record all the same. */
export const recordWheelOn: CommandRule<'recordWheelOn'> = {
  needs: ({ jobId }) => needsWheels(jobId),
  decide(rows, input: RecordWheelOn, at) {
    const said = wheelsSaid(rows, input.jobId, input.positions);
    if (said instanceof Refused) return said;
    const { torque } = input;
    const refused = torque && badTorque(torque);
    if (refused) return refused;
    const before = nowAt(rows, input.jobId);
    for (const position of said.positions) {
      const wheel = before.get(position);
      // On and tightened already: it must have come off in between, so it waits for its torque anew.
      const same = wheel !== undefined && wheel.torquedAt === null;
      const row = same ? wheel : rows.add('wheelRecord', blank(at, said, position));
      const onAt = row.onAt ?? Math.max(at.effectiveAt, row.offAt ?? 0);
      rows.change('wheelRecord', row.id, {
        onAt,
        onById: row.onAt === null ? at.by.personId : row.onById,
        ...(torque ? torqued(torque, at, onAt) : {}),
      });
    }
    return { facts: factsOf(said, torque) };
  },
};

/**
 * Wheels that are on get their torque. Tightened anew, or without any record, a wheel gets a record of its own, so that
 * the earlier value is kept; one that was still recorded as off is on from then.
 */
export const recordTorque: CommandRule<'recordTorque'> = {
  needs: ({ jobId }) => needsWheels(jobId),
  decide(rows, input: RecordTorque, at) {
    const said = wheelsSaid(rows, input.jobId, input.positions);
    if (said instanceof Refused) return said;
    const refused = badTorque(input);
    if (refused) return refused;
    const before = nowAt(rows, input.jobId);
    for (const position of said.positions) {
      const wheel = before.get(position);
      const untold = wheel !== undefined && wheel.torquedAt === null ? wheel : undefined;
      const { id } = untold ?? rows.add('wheelRecord', anew(at, said, position, wheel));
      const stillOff = untold !== undefined && isOff(untold);
      const onAt = Math.max(at.effectiveAt, untold?.offAt ?? 0);
      rows.change('wheelRecord', id, {
        ...(stillOff ? { onAt, onById: at.by.personId } : {}),
        ...torqued(input, at, untold?.onAt ?? onAt),
      });
    }
    return { facts: factsOf(said, input) };
  },
};

/** The same wheel as before, to be tightened anew; nothing of when it came off and on is said twice otherwise. */
function anew(at: Circumstances, visit: Visit, position: string, before: Wheel | undefined): NewRow<'wheelRecord'> {
  const row = blank(at, visit, position);
  if (!before) return row;
  const { lineId, offAt, offById, onAt, onById } = before;
  return { ...row, lineId, offAt, offById, onAt, onById };
}

function factsOf({ job, positions }: Visit & { positions: string[] }, torque: TorqueFacts | undefined) {
  const told = torque && {
    torque: canonical(torque.torque),
    torqueUnit: torque.torqueUnit,
    source: torque.torqueSource,
  };
  return { jobId: job.id, positions: positions.join(' '), ...told };
}
