/**
 * A shop on a fresh database, worked through the engine itself: the store, the queue and the log are the real ones,
 * only HTTP is left out. For tests of rules that hold beneath any transport.
 */
import { commands, inputFromWire, type Wire } from '@holdfast/contract';
import type { CommandInputs, CommandName, Role } from '@holdfast/domain';
import { createHash, randomUUID } from 'node:crypto';
import type pg from 'pg';
import { v7 as newId } from 'uuid';
import type { Answer, RunCommand, Sender } from '../../apps/server/src/engine/ports.js';
import { makeRunCommand } from '../../apps/server/src/engine/run-command.js';
import { makeSetUp } from '../../apps/server/src/engine/set-up.js';
import { makeOpenShop } from '../../apps/server/src/store/open-shop.js';
import { makeStore } from '../../apps/server/src/store/store.js';

export interface Accepted {
  readonly seq: number;
  readonly at: string;
  readonly created: Readonly<Record<string, string>>;
  readonly flags: readonly string[];
  readonly contested: readonly string[];
}

export interface EngineShop {
  readonly shopId: string;
  readonly ownerId: string;
  readonly run: RunCommand;
  sender(personId: string, roles: readonly Role[]): Sender;
  /** Sends as the owner and gives the whole answer. */
  ask<N extends CommandName>(name: N, input: Wire<CommandInputs[N]>, by?: Sender, key?: string): Promise<Answer>;
  /** Sends as the owner (or `by`); a refusal fails the test with its codes. */
  readonly accept: <N extends CommandName>(
    name: N,
    input: Wire<CommandInputs[N]>,
    by?: Sender,
    key?: string,
  ) => Promise<Accepted>;
  /** Codes of the refusals that the command must meet; fails the test when it is accepted. */
  refused<N extends CommandName>(name: N, input: Wire<CommandInputs[N]>, by?: Sender): Promise<string[]>;
}

export interface EngineShopOptions {
  readonly ownClock?: boolean;
  readonly name?: string;
  readonly zone?: string;
}

export async function engineShop(pool: pg.Pool, options: EngineShopOptions = {}): Promise<EngineShop> {
  const parts = { store: makeStore(pool), wake: () => undefined, newId };
  const shopId = newId();
  const setUp = makeSetUp(parts, makeOpenShop(pool));
  const input = {
    code: 'in a test',
    shop: {
      name: options.name ?? `Shop ${shopId.slice(-4)}`,
      zone: options.zone ?? 'Europe/London',
      currency: 'GBP',
      units: 'metric',
      locale: 'en-GB',
    },
    owner: { name: 'Owner', password: 'not looked at here' },
  } as const;
  const sent = { name: 'setUpShop', input, key: randomUUID(), fingerprint: 'set-up', sentAt: null } as const;
  const ownerId = accepted(await setUp(shopId, sent, { ownClock: options.ownClock ?? false })).created['person'] ?? '';
  const run = makeRunCommand(parts);
  const sender = (personId: string, roles: readonly Role[]): Sender => ({
    shopId,
    personId,
    name: 'Someone',
    roles,
    device: null,
  });
  const owner = sender(ownerId, ['owner']);
  const ask: EngineShop['ask'] = (name, wire, by = owner, key = randomUUID()) => {
    const checked = commands[name].schema.parse(wire);
    const fingerprint = createHash('sha256')
      .update(JSON.stringify([name, checked]))
      .digest('hex');
    return run(by, { name, input: inputFromWire(checked), key, fingerprint, sentAt: null });
  };
  return {
    shopId,
    ownerId,
    run,
    sender,
    ask,
    accept: async (name, wire, by, key) => accepted(await ask(name, wire, by, key)),
    refused: async (name, wire, by) => {
      const answer = await ask(name, wire, by);
      if (answer.kind !== 'refused') throw new Error(`${name} should have been refused, but was ${answer.kind}`);
      return answer.refusals.map((refusal) => refusal.code);
    },
  };
}

function accepted(answer: Answer): Accepted {
  if (answer.kind === 'accepted') return JSON.parse(answer.body) as Accepted;
  throw new Error(`not accepted: ${JSON.stringify(answer)}`);
}

/** A vehicle in the yard with one line that has the customer's go-ahead, and a flat bay. */
export async function vehicleAndBay(shop: EngineShop, plate = 'HB 100') {
  const bayId =
    (
      await shop.accept('addBay', {
        name: `Bay ${plate}`,
        spots: 1,
        equipment: [{ kind: 'flat', inUse: true, grips: null }],
      })
    ).created['bay'] ?? '';
  const vehicle = await shop.accept('addVehicle', { plate, description: 'Van', kind: 'light', drive: 'combustion' });
  const vehicleId = vehicle.created['vehicle'] ?? '';
  const visit = await shop.accept('checkIn', {
    vehicleId,
    customer: { name: `Keeper of ${plate}` },
    contact: { name: 'Somebody', phone: '01 23', mayAgreeUpTo: '120.00' },
    concerns: [{ words: 'Knocks over bumps', conditions: 'Cold, below 5 °C' }],
  });
  const jobId = visit.created['job'] ?? '';
  const line = await shop.accept('addLine', { jobId, title: 'Find the knock', bookMinutes: 60, price: '90.00' });
  const lineId = line.created['workLine'] ?? '';
  await shop.accept('recordGoAhead', {
    lineId,
    version: 1,
    answer: 'given',
    byName: 'Somebody',
    how: 'there',
    upTo: '120.00',
  });
  return { bayId, vehicleId, jobId, lineId };
}
