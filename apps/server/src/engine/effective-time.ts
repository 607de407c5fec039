/**
 * When a command happened. Facts and turns from an outbox carry the device's time; it is corrected by the offset that
 * this request measured (the device's clock when it sent against ours), and is never later than now. Claims take now.
 */
import { Refused, refuse } from '@holdfast/domain';
import type { CommandClass } from '@holdfast/contract';
import type { Sent } from './ports.js';

/** A clock that is off by less is a clock like any other. */
const skewWorthMarkingMs = 2 * 60_000;
/** A time said to lie in the future by no more than this is taken as now: clocks tick while a request travels. */
const futureToleranceMs = 60_000;

export function effectiveTime(
  sent: Sent,
  kind: CommandClass,
  now: number,
): { readonly effectiveAt: number; readonly skewMs: number } | Refused {
  const said = (sent.input as { at?: number }).at;
  const skewMs = sent.sentAt === null ? 0 : sent.sentAt - now;
  const marked = Math.abs(skewMs) > skewWorthMarkingMs ? skewMs : 0;
  const reported = kind !== 'claim' || isReport(sent);
  if (said === undefined || !reported) return { effectiveAt: now, skewMs: marked };
  const corrected = Math.round(said - (sent.sentAt === null ? 0 : skewMs));
  if (corrected > now + futureToleranceMs) {
    return refuse('time.inFuture', { at: new Date(said).toISOString(), now: new Date(now).toISOString() });
  }
  return { effectiveAt: Math.min(corrected, now), skewMs: marked };
}

/** A claim that says what is already so is a report of a fact. */
function isReport(sent: Sent): boolean {
  const input = sent.input as { alreadyThere?: boolean; alreadyStarted?: boolean };
  return input.alreadyThere === true || input.alreadyStarted === true;
}
