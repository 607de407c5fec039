/** The three forms of a sublet under way: the vehicle goes out, a component goes out, somebody comes in; and their end. */
import { againstAct, flagAct } from '../cautions/against-cautions.js';
import type { BringBack, SendAway } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refusal, Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { placeOf } from '../questions/place-and-work.js';
import type { Visit } from '../questions/visit.js';
import { placesOfVehicle } from '../timeline/lanes.js';
import { settledReport } from '../timeline/reports.js';
import { earliest } from '../timeline/timeline.js';
import { actOfMove, againstMoving, flagMove, moveVehicle, ownSpotOf } from './move-vehicle.js';
import { againstLeaving, againstRoad, backTo, flagRoad } from './road-test.js';
import { begin, endSublet, subletOf, type SubletOfVisit, subletToBegin } from './sublet.js';

/** On dollies, towed or on a transporter; else it goes by road, under its own power. */
const isCarriedOut = (input: SendAway): boolean => actOfMove(input) === 'moveTowed';

function againstGoing(rows: Rows, at: Circumstances, visit: Visit, input: SendAway): Refusal[] {
  if (!isCarriedOut(input)) return againstRoad(rows, at, visit);
  const onTransporter = againstAct(rows, at, visit.vehicle.id, 'handBackOnTransporter');
  const moving = againstMoving(rows, at, visit, input);
  return [...moving, ...onTransporter.filter((one) => !moving.some((other) => other.way?.id === one.way?.id))];
}

function flagGoing(rows: Rows, at: Circumstances, visit: Visit, input: SendAway): void {
  if (!isCarriedOut(input)) flagRoad(rows, at, visit);
  else flagMove(rows, at, visit, input);
}

/** The vehicle goes to the firm: intended, which rule 3 and the cautions may refuse, or gone already, which is flagged. */
export const sendAway: CommandRule<'sendAway'> = {
  needs: ({ subletId }) => ({ sublets: [subletId] }),
  decide(rows, input, at) {
    const found = subletToBegin(rows, input.subletId, 'vehicleOut');
    if (found instanceof Refused) return found;
    if (input.placeId !== undefined && rows.find('place', input.placeId)) {
      return refuse('place.alreadyRecorded', { id: input.placeId });
    }
    const { job, vehicle, sublet } = found;
    const place = placeOf(rows, job.id);
    if (place?.kind === 'away') return refuse('place.notHere', { kind: place.kind });
    if (input.alreadyOut === true) flagGoing(rows, at, found, input);
    else {
      const refusals = [...againstLeaving(place), ...againstGoing(rows, at, found, input)];
      if (refusals.length > 0) return new Refused(refusals);
    }
    const from = earliest(placesOfVehicle(rows, vehicle.id), at.effectiveAt);
    const keeps = input.keepSpot ? spotKept(rows, vehicle.id) : null;
    const { placeId, movedHow, movedByName } = input;
    const to = { placeId, movedHow, movedByName, subletId: sublet.id, dueBackAt: sublet.dueBackAt } as const;
    const away = moveVehicle(rows, at, found, { ...to, kind: 'away', keeps }, from);
    const hold = begin(rows, at, found, from);
    const report = reportOf(rows, at, found, { kind: 'sendAway', said: input, happenedAt: from });
    const facts = { ...factsOf(found), keepSpot: keeps !== null };
    return { facts, created: { place: away.id, ...(hold === null ? {} : { hold }), report } };
  },
};

/** The spot it stands in; from a road test, the one that was kept for that. */
function spotKept(rows: Rows, vehicleId: string) {
  return ownSpotOf(rows, vehicleId, 'stands') ?? ownSpotOf(rows, vehicleId, 'kept');
}

function factsOf({ job, vehicle, sublet }: SubletOfVisit) {
  return { jobId: job.id, jobNumber: job.number, vehicleId: vehicle.id, subletId: sublet.id, form: sublet.form };
}

/** What was said of it, kept as it was said. */
interface Told {
  readonly kind: 'sendAway' | 'bringBack';
  readonly said: SendAway | BringBack;
  readonly happenedAt: number;
}

function reportOf(rows: Rows, at: Circumstances, { job, vehicle }: Visit, told: Told): string {
  return settledReport(rows, at, { jobId: job.id, vehicleId: vehicle.id, ...told }).id;
}

/** A component goes out; the vehicle stays where it is, and what the component belongs to waits for it. */
export const sendComponentAway: CommandRule<'sendComponentAway'> = {
  needs: ({ subletId }) => ({ sublets: [subletId] }),
  decide(rows, { subletId }, at) {
    const found = subletToBegin(rows, subletId, 'componentOut');
    if (found instanceof Refused) return found;
    const hold = begin(rows, at, found, at.effectiveAt);
    return { facts: factsOf(found), created: hold === null ? {} : { hold } };
  },
};

/** Somebody of the firm works here, which holds nothing up. What the cautions say against work goes for them as well. */
export const letOutsiderIn: CommandRule<'letOutsiderIn'> = {
  needs: ({ subletId }) => ({ sublets: [subletId] }),
  decide(rows, { subletId }, at) {
    const found = subletToBegin(rows, subletId, 'outsiderIn');
    if (found instanceof Refused) return found;
    const { job, vehicle } = found;
    // Nobody of the shop knows the skills of somebody from outside: marked, for the shop to answer.
    flagAct(rows, at, { jobId: job.id, vehicleId: vehicle.id }, 'startWork', { personId: null });
    begin(rows, at, found, at.effectiveAt);
    return { facts: factsOf(found) };
  },
};

/** Vehicle or component is back, or the outsider has gone. A vehicle that stands here by now is not moved again. */
export const bringBack: CommandRule<'bringBack'> = {
  needs: ({ subletId }) => ({ sublets: [subletId] }),
  decide(rows, input, at) {
    const found = subletOf(rows, input.subletId);
    if (found instanceof Refused) return found;
    const { vehicle, sublet } = found;
    if (sublet.state !== 'underWay') return refuse('sublet.notUnderWay', { state: sublet.state });
    if (input.placeId !== undefined && rows.find('place', input.placeId)) {
      return refuse('place.alreadyRecorded', { id: input.placeId });
    }
    const isAway = placeOf(rows, sublet.jobId)?.subletId === sublet.id;
    const kept = ownSpotOf(rows, vehicle.id, 'kept');
    if (isAway && input.intoKeptSpot === true && !kept) return refuse('place.spotNotKept');
    const lane = isAway ? placesOfVehicle(rows, vehicle.id) : [];
    const toAt = earliest(lane, Math.max(at.effectiveAt, sublet.fromAt ?? 0));
    const place = isAway ? moveVehicle(rows, at, found, backTo(input, kept), toAt) : null;
    endSublet(rows, at, sublet, { toAt, price: input.price, words: input.words });
    const report = reportOf(rows, at, found, { kind: 'bringBack', said: input, happenedAt: toAt });
    return { facts: factsOf(found), created: { ...(place ? { place: place.id } : {}), report } };
  },
};
