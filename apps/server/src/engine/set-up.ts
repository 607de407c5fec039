/**
 * A new shop: its log head, and `setUpShop` as the first change in it, sent by nobody. Whether somebody may (the code
 * printed at start) is checked before, in http/.
 */
import { type CommandInputs, Refused, Rows, rules } from '@holdfast/domain';
import { calendarOf } from '@holdfast/shop-calendar';
import type { Answer, Sender, Sent } from './ports.js';
import { type EngineParts, makeRunCommand } from './run-command.js';

/** Makes the log head of a shop; with a clock of its own for demo and test shops. */
export type OpenShop = (shopId: string, options: { readonly ownClock: boolean }) => Promise<void>;

export type SetUp = (
  shopId: string,
  sent: Sent<'setUpShop'>,
  options: { readonly ownClock: boolean },
) => Promise<Answer>;

export function makeSetUp(parts: EngineParts, openShop: OpenShop): SetUp {
  return async (shopId, sent, { ownClock }) => {
    const refusals = refusalsOf(sent.input, parts.newId);
    if (refusals) return { kind: 'refused', refusals: refusals.refusals, current: null };
    await openShop(shopId, { ownClock });
    const sender: Sender = { shopId, personId: shopId, name: '', roles: [], device: null, system: true };
    return makeRunCommand({ ...parts, newId: startingWith(shopId, parts.newId) })(sender, sent);
  };
}

/** Decided once on nothing, so that a refused set-up leaves no head behind. */
function refusalsOf(input: CommandInputs['setUpShop'], newId: () => string): Refused | null {
  const outcome = rules.setUpShop.decide(new Rows(), input, {
    now: 0,
    effectiveAt: 0,
    skewMs: 0,
    by: { personId: null, name: '', roles: [] },
    device: null,
    newId,
    calendar: calendarOf({ zone: 'UTC', hours: [], exceptions: [] }),
  });
  return outcome instanceof Refused ? outcome : null;
}

/** The first id that a new shop's decision asks for is the shop's own. */
function startingWith(first: string, newId: () => string): () => string {
  let given = false;
  return () => {
    if (given) return newId();
    given = true;
    return first;
  };
}
