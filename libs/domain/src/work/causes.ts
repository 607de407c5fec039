/** From a concern to its cause: tries to make it appear, each under its conditions, and what brings it about. */
import type { RecordAttempt } from '../inputs.js';
import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { odometerUnitOf } from '../job/odometer.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { visitOf } from '../questions/visit.js';

/** A fact, kept whatever became of the visit. */
export const recordAttempt: CommandRule<'recordAttempt'> = {
  needs: ({ concernId }) => ({
    concerns: [concernId],
    tables: ['concern', 'attempt', 'place', 'odometerReading'],
  }),
  decide(rows, input, at) {
    const concern = live(rows, 'concern', input.concernId);
    if (!concern) return notThere('concern', input.concernId);
    const visit = visitOf(rows, concern.jobId);
    if (visit instanceof Refused) return visit;
    const refused = badAttempt(rows, input, concern.jobId);
    if (refused) return refused;
    const attempt = rows.add('attempt', {
      id: input.attemptId ?? at.newId(),
      ...recordedBy(at),
      jobId: concern.jobId,
      concernId: concern.id,
      conditions: input.conditions,
      odometer: input.odometer ?? null,
      odometerUnit: input.odometerUnit ?? odometerUnitOf(rows, visit.vehicle.id),
      appeared: input.appeared,
      words: input.words ?? null,
      placeId: input.placeId ?? null,
    });
    const { jobId, appeared, odometer } = attempt;
    return {
      facts: { jobId, concernId: concern.id, position: concern.position, appeared, odometer },
      created: { attempt: attempt.id },
    };
  },
};

function badAttempt(rows: Rows, { attemptId, placeId }: RecordAttempt, jobId: string): Refused | null {
  if (attemptId !== undefined && rows.find('attempt', attemptId)) {
    return refuse('work.alreadyRecorded', { table: 'attempt', id: attemptId });
  }
  if (placeId === undefined) return null;
  const place = live(rows, 'place', placeId);
  if (!place) return notThere('place', placeId);
  return place.jobId === jobId ? null : refuse('work.otherJob', { table: 'place', id: placeId });
}

export const recordCause: CommandRule<'recordCause'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], tables: ['concern', 'cause', 'causeConcern'] }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    const { jobId, words, certainty } = input;
    if (input.causeId !== undefined && rows.find('cause', input.causeId)) {
      return refuse('work.alreadyRecorded', { table: 'cause', id: input.causeId });
    }
    const refused = badConcerns(rows, jobId, input.concernIds);
    if (refused) return refused;
    const causeId = input.causeId ?? at.newId();
    rows.add('cause', { id: causeId, ...recordedBy(at), jobId, words, certainty });
    const concernIds = new Set(input.concernIds);
    for (const concernId of concernIds) rows.add('causeConcern', { id: at.newId(), jobId, causeId, concernId });
    return { facts: { jobId, causeId, certainty, concerns: concernIds.size }, created: { cause: causeId } };
  },
};

/** The concerns it explains are of its own visit. */
function badConcerns(rows: Rows, jobId: string, concernIds: readonly string[]): Refused | null {
  for (const id of concernIds) {
    const concern = live(rows, 'concern', id);
    if (!concern) return notThere('concern', id);
    if (concern.jobId !== jobId) return refuse('work.otherJob', { table: 'concern', id });
  }
  return null;
}

/** The list of concerns is the whole one: what it leaves out is explained by this cause no longer. */
export const changeCause: CommandRule<'changeCause'> = {
  needs: ({ causeId }) => ({ causes: [causeId], tables: ['concern', 'cause', 'causeConcern'] }),
  decide(rows, input, at) {
    const cause = live(rows, 'cause', input.causeId);
    if (!cause) return notThere('cause', input.causeId);
    const visit = visitOf(rows, cause.jobId);
    if (visit instanceof Refused) return visit;
    const { job } = visit;
    if (job.endedAt !== null) return refuse('work.jobEnded', { jobNumber: job.number });
    const refused = input.concernIds && badConcerns(rows, job.id, input.concernIds);
    if (refused) return refused;
    const { words = cause.words, certainty = cause.certainty } = input;
    rows.change('cause', cause.id, { words, certainty });
    const before = rows.list('causeConcern', (one) => one.causeId === cause.id);
    const wanted = new Set(input.concernIds ?? before.map((one) => one.concernId));
    for (const one of before) {
      if (!wanted.delete(one.concernId)) rows.change('causeConcern', one.id, { void: true });
    }
    const of = { jobId: job.id, causeId: cause.id };
    for (const concernId of wanted) rows.add('causeConcern', { id: at.newId(), ...of, concernId });
    const concerns = rows.list('causeConcern', (one) => one.causeId === cause.id).length;
    return { facts: { ...of, certainty, concerns } };
  },
};
