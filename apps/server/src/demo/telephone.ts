/** What is said with the customer, as the contact log keeps it; an entry for a call that somebody had to make ends it. */
import type { CommandInputs, Row } from '@holdfast/domain';
import type { PersonKey } from './cast.js';
import type { Script } from './floor.js';
import type { VisitUnderWay } from './visit-parts.js';

type Said = Omit<CommandInputs['recordContact'], 'vehicleId' | 'jobId' | 'callId' | 'followUpId'>;

/** The call about this visit that waits to be made, for that reason. */
export function callOf({ floor, jobId }: VisitUnderWay, reason: Row<'call'>['reason']): string | undefined {
  const { atHand } = floor.parts.ledger;
  return atHand.list('call', (call) => call.jobId === jobId && call.reason === reason && call.endedAt === null)[0]?.id;
}

/** One entry of the log; of the call for that reason where one waits. */
export function speak(visit: VisitUnderWay, reason: Row<'call'>['reason'], said: Said, by: PersonKey = 'desk'): void {
  const { floor, vehicleId, jobId } = visit;
  const callId = callOf(visit, reason);
  floor.send(by, 'recordContact', { vehicleId, jobId, ...(callId === undefined ? {} : { callId }), ...said });
}

/** Nobody answers; somebody tries again at that instant (epoch ms). */
export function nobodyAnswers(visit: VisitUnderWay, reason: Row<'call'>['reason'], nextTryAt: number): void {
  speak(visit, reason, { way: 'telephone', reached: false, nextTryAt, moveOf: 'shop' });
}

/** Every other one is rung when the vehicle is ready, some of them twice; the others stand at the desk before that. */
export function* tellThatItIsReady(visit: VisitUnderWay): Script {
  const { floor } = visit;
  if (callOf(visit, 'ready') === undefined || !floor.chance.odds(0.5)) return;
  yield floor.later(2, 9);
  yield* floor.untilOpen();
  if (floor.chance.odds(0.15)) {
    const again = floor.later(25, 50);
    nobodyAnswers(visit, 'ready', again);
    yield again;
    yield* floor.untilOpen();
  }
  const answer = floor.chance.of(['Comes at once', 'Comes after work', 'Sends somebody']);
  const withName = visit.vehicle.customer.contact.name;
  speak(visit, 'ready', {
    way: floor.chance.of(['telephone', 'message']),
    withName,
    reached: true,
    answer,
    moveOf: 'customer',
  });
}
