/**
 * The one way to write. A transaction of a shop locks its head, reads keys, slices and the time, and carries out one
 * command or several that have nothing to do with each other: for each check role and version, decide, settle; then write
 * rows + changes + answers, commit, wake the feed. Nothing else in the server changes a shop's rows. Refusals are
 * answers; exceptions are bugs and outages.
 *
 * Each command stays a change of its own, decided on the rows that it would find after those before it, with the next
 * number and a later time; one that is refused or fails leaves nothing and stops no other. Where the database stops what
 * several wrote together, nothing of it stands, and each of them is carried out in a transaction of its own.
 */
import { encodeRow } from '@holdfast/board';
import { may, mayDo } from '@holdfast/contract';
import { type Refusal, Refused, type Row, rules, type TableName } from '@holdfast/domain';
import { namesOf, standsAlone, Written } from './apart.js';
import { decided } from './decide.js';
import {
  type Answer,
  type Change,
  type CurrentRow,
  type OpenCall,
  type OpenedCommand,
  type RunCommand,
  type Sender,
  type Sent,
  TryAgain,
  type Wake,
  type WriteStore,
} from './ports.js';
import { makeShopQueues, type Queued } from './shop-queues.js';

export interface EngineParts {
  readonly store: WriteStore;
  readonly wake: Wake;
  /** The next UUIDv7. */
  readonly newId: () => string;
  /** Called after a commit that erased personal data, with the contents of the photos that went; must not throw. */
  readonly erased?: (shopId: string, photos: readonly string[]) => void;
}

interface Asked extends Queued {
  readonly sender: Sender;
  readonly sent: Sent;
  readonly call: OpenCall;
  readonly answer: (answer: Answer) => void;
  readonly fail: (failure: unknown) => void;
}

/** What became of one command of a transaction. */
type Told =
  | Answer
  | { readonly kind: 'failed'; readonly failure: unknown }
  /** An earlier one of the transaction wrote what this one rests on: not decided. */
  | { readonly kind: 'again' };

const attempts = 5;

/** The same store, which tells of the photos that went once their change is committed. */
function tellingOfPhotos(store: WriteStore, erased: NonNullable<EngineParts['erased']>): WriteStore {
  return {
    transaction: (shopId, calls, work) =>
      store.transaction(shopId, calls, (opened, commit) =>
        work(opened, async (changes) => {
          await commit(changes);
          const edits = changes.filter(({ erases }) => erases).flatMap((change) => change.edits);
          const photos = edits.flatMap(({ table, after }) => {
            const photo = after as Row<'photo'>;
            return table === 'photo' && photo.void && photo.showsPeople ? [photo.content] : [];
          });
          if (photos.length > 0) erased(shopId, photos);
        }),
      ),
  };
}

export function makeRunCommand({ store: given, wake, newId, erased }: EngineParts): RunCommand {
  const store = erased ? tellingOfPhotos(given, erased) : given;
  const tell = (shopId: string, asked: readonly Asked[], told: readonly Told[]): Asked[] => {
    const last = told.reduce((seq, one) => (one.kind === 'accepted' && !one.replayed ? one.seq : seq), 0);
    if (last > 0) wake(shopId, last);
    return asked.filter((one, at) => {
      const what = told[at] ?? { kind: 'again' };
      if (what.kind === 'failed') one.fail(what.failure);
      else if (what.kind !== 'again') one.answer(what);
      return what.kind === 'again';
    });
  };
  const queues = makeShopQueues<Asked>(async (shopId, together) => {
    const told = together.length > 1 ? await attemptTogether(store, shopId, together, newId) : null;
    if (told) return tell(shopId, together, told);
    let down: Told | null = null;
    for (const one of together) {
      const what: Told = down ?? (await carryOutAlone(store, shopId, one, newId));
      tell(shopId, [one], [what]);
      if (what.kind === 'failed' && what.failure instanceof DatabaseDown) down = what;
    }
    return [];
  });
  return (sender, sent) =>
    new Promise((answer, fail) => {
      const call = callOf(sender, sent);
      queues.add(sender.shopId, {
        sender,
        sent,
        call,
        answer,
        fail,
        names: namesOf(call),
        alone: standsAlone(call.slices),
      });
    });
}

/** The database could not take the command now; nothing was written, the same key may be sent again. */
export class ShopBusy extends Error {
  constructor(cause?: unknown) {
    super('the shop is busy', { cause });
  }
}

/** Not only busy for this command: there is no use in asking for the next one. */
class DatabaseDown extends ShopBusy {}

const pauseBefore = (attempt: number) =>
  new Promise((resolve) => setTimeout(resolve, Math.random() * 10 * 2 ** attempt));

function callOf(sender: Sender, sent: Sent): OpenCall {
  const needs = rules[sent.name].needs as (input: Sent['input']) => OpenCall['slices'];
  const asked = needs(sent.input);
  // Nobody who may not accept a file has its rows laid down first.
  const { importId: _file, ...withoutFile } = asked;
  const slices = may(sender.roles, mayDo[sent.name]) ? asked : withoutFile;
  return {
    sender: sender.personId,
    key: sent.key,
    afterKey: (sent.input as { afterKey?: string }).afterKey ?? null,
    slices: slices.sender ? { ...slices, people: [...(slices.people ?? []), sender.personId] } : slices,
  };
}

/** Null: nothing of it was written, or it is not known; each must be carried out alone, where its key tells. */
async function attemptTogether(
  store: WriteStore,
  shopId: string,
  together: readonly Asked[],
  newId: () => string,
): Promise<readonly Told[] | null> {
  try {
    const result = await attempt(store, shopId, together, newId);
    if (result === 'busy') return together.map((): Told => ({ kind: 'failed', failure: new DatabaseDown() }));
    return Array.isArray(result) ? (result as readonly Told[]) : null;
  } catch {
    return null;
  }
}

async function carryOutAlone(store: WriteStore, shopId: string, one: Asked, newId: () => string): Promise<Told> {
  try {
    for (let count = 1; ; count += 1) {
      const result = await attempt(store, shopId, [one], newId);
      if (result === 'busy') throw new DatabaseDown();
      if (result === null) return refusedBy({ code: 'row.notFound', facts: { table: 'shop', id: shopId } });
      if ('code' in result) return refusedBy(result);
      if (!(result instanceof TryAgain)) return result[0] ?? { kind: 'again' };
      if (count === attempts) throw new ShopBusy(result.cause);
      await pauseBefore(count);
    }
  } catch (failure) {
    return { kind: 'failed', failure };
  }
}

const refusedBy = (refusal: Refusal): Answer => ({ kind: 'refused', refusals: [refusal], current: null });

function attempt(store: WriteStore, shopId: string, asked: readonly Asked[], newId: () => string) {
  const calls = asked.map((one) => one.call);
  return store.transaction(shopId, calls, async (opened, commit): Promise<readonly Told[]> => {
    const { told, changes } = decideAll(asked, opened, newId);
    if (changes.length > 0) await commit(changes);
    return told;
  });
}

/** One after the other, each on its own rows, which none of those before it may have touched. */
function decideAll(asked: readonly Asked[], opened: readonly OpenedCommand[], newId: () => string) {
  const changes: Change[] = [];
  const written = new Written();
  const told = asked.map(({ sender, sent, names }, at): Told => {
    const shown = opened[at];
    if (!shown) return { kind: 'again' };
    if (shown.stored) return replay(shown.stored, sent);
    if (!written.leaves(names, shown.rows)) return { kind: 'again' };
    const { seq, now, configSeq } = shown.head;
    // Each a number and a millisecond after the one before it.
    const mine = { ...shown, head: { seq: seq + changes.length, now: now + changes.length, configSeq } };
    try {
      const verdict = decided(mine, sender, sent, newId);
      if (verdict instanceof Refused) return refused(verdict.refusals, mine);
      changes.push(verdict);
      written.add(verdict.edits);
      return { kind: 'accepted', seq: verdict.entry.seq, body: verdict.entry.body, replayed: false };
    } catch (failure) {
      return { kind: 'failed', failure };
    }
  });
  return { told, changes };
}

function replay(stored: NonNullable<OpenedCommand['stored']>, sent: Sent): Answer {
  if (stored.fingerprint !== sent.fingerprint) return { kind: 'keyUsedOtherwise' };
  return { kind: 'accepted', seq: stored.seq, body: stored.body, replayed: true };
}

function refused(refusals: readonly Refusal[], opened: OpenedCommand): Answer {
  const stale = refusals.find((refusal) => refusal.code === 'row.stale');
  return { kind: 'refused', refusals, current: stale ? currentRow(opened, stale) : null };
}

function currentRow(opened: OpenedCommand, { facts }: Refusal): CurrentRow | null {
  const table = facts['table'] as TableName;
  const row = opened.rows.find(table, String(facts['id']));
  return row ? { table, row: encodeRow(table, row, 'staff') } : null;
}
