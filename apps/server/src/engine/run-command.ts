/**
 * The one way to write. A command is one transaction of its shop: lock the head, read the key and the slices and the
 * time, check role and version, decide, settle, write rows + change + answer, commit, wake the feed. Nothing else in
 * the server changes a shop's rows. Refusals are answers; exceptions are bugs and outages.
 *
 * Commands of one shop queue here: more transactions at once for one head row only wait on each other in PostgreSQL.
 */
import { differences, encodeRow } from '@holdfast/board';
import { commands, may, mayDo } from '@holdfast/contract';
import {
  type By,
  type Circumstances,
  type CommandInputs,
  type CommandName,
  type Edit,
  flag,
  type Outcome,
  type Refusal,
  Refused,
  type Rows,
  refuse,
  rules,
  settle,
  type TableName,
} from '@holdfast/domain';
import { changeMessages, subjectsOf } from './change-message.js';
import { effectiveTime } from './effective-time.js';
import { checkVersion } from './check-version.js';
import {
  type Answer,
  type CurrentRow,
  type LogEntry,
  type OpenedCommand,
  type RunCommand,
  type Sender,
  type Sent,
  TryAgain,
  type Wake,
  type WriteStore,
} from './ports.js';
import { makeShopQueues } from './shop-queues.js';
import { touchesShop } from './shop-tables.js';

export interface EngineParts {
  readonly store: WriteStore;
  readonly wake: Wake;
  /** The next UUIDv7. */
  readonly newId: () => string;
}

const attempts = 5;

export function makeRunCommand({ store, wake, newId }: EngineParts): RunCommand {
  const queues = makeShopQueues();
  return (sender, sent) =>
    queues.run(sender.shopId, async () => {
      for (let attempt = 1; ; attempt += 1) {
        const answer = await attemptOnce(store, sender, sent, newId);
        if (answer instanceof TryAgain) {
          if (attempt === attempts) throw new ShopBusy(answer.cause);
          await pauseBefore(attempt);
          continue;
        }
        if (answer.kind === 'accepted' && !answer.replayed) wake(sender.shopId, answer.seq);
        return answer;
      }
    });
}

/** The database could not take the command now; nothing was written, the same key may be sent again. */
export class ShopBusy extends Error {
  constructor(cause?: unknown) {
    super('the shop is busy', { cause });
  }
}

const pauseBefore = (attempt: number) =>
  new Promise((resolve) => setTimeout(resolve, Math.random() * 10 * 2 ** attempt));

async function attemptOnce<N extends CommandName>(
  store: WriteStore,
  sender: Sender,
  sent: Sent<N>,
  newId: () => string,
): Promise<Answer | TryAgain> {
  const slices = rules[sent.name].needs(sent.input);
  const call = {
    shopId: sender.shopId,
    sender: sender.personId,
    key: sent.key,
    afterKey: (sent.input as { afterKey?: string }).afterKey ?? null,
    slices: slices.sender ? { ...slices, people: [...(slices.people ?? []), sender.personId] } : slices,
  };
  const result = await store.transaction(call, async (opened, commit): Promise<Answer> => {
    if (opened.stored) return replay(opened, sent);
    const verdict = decided(opened, sender, sent, newId);
    if (verdict instanceof Refused) return refused(verdict.refusals, opened);
    await commit(verdict.edits, verdict.entry);
    return { kind: 'accepted', seq: verdict.entry.seq, body: verdict.entry.body, replayed: false };
  });
  if (result === 'busy') throw new ShopBusy();
  if (result instanceof TryAgain) return result;
  if (result === null)
    return {
      kind: 'refused',
      refusals: [{ code: 'row.notFound', facts: { table: 'shop', id: sender.shopId } }],
      current: null,
    };
  if ('code' in result) return { kind: 'refused', refusals: [result], current: null };
  return result;
}

function replay(opened: OpenedCommand, sent: Sent): Answer {
  const { stored } = opened;
  if (!stored || stored.fingerprint !== sent.fingerprint) return { kind: 'keyUsedOtherwise' };
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

interface Decided {
  readonly edits: readonly Edit[];
  readonly entry: LogEntry;
}

function decided<N extends CommandName>(
  opened: OpenedCommand,
  sender: Sender,
  sent: Sent<N>,
  newId: () => string,
): Decided | Refused {
  if (!may(sender.roles, mayDo[sent.name]) && !sender.system) return refuse('role.mayNot', { command: sent.name });
  const time = effectiveTime(sent, commands[sent.name].class, opened.head.now);
  if (time instanceof Refused) return time;
  const stale = checkVersion(opened, sent);
  if (stale) return stale;
  const by: By = { personId: sender.system ? null : sender.personId, name: sender.name, roles: sender.roles };
  const at: Circumstances = {
    now: opened.head.now,
    effectiveAt: time.effectiveAt,
    skewMs: time.skewMs,
    by,
    device: sender.device,
    newId,
    calendar: opened.calendar,
    ...(opened.takenBack ? { takenBack: opened.takenBack } : {}),
  };
  const after = opened.rows.fork();
  const decide = rules[sent.name].decide as (
    rows: Rows,
    input: CommandInputs[N],
    at: Circumstances,
  ) => Outcome | Refused;
  const outcome = decide(after, sent.input, at);
  if (outcome instanceof Refused) return outcome;
  markDeviceClock(after, sent, at);
  settle(after, at);
  return entryOf(opened, { sender, sent, at }, outcome, after);
}

/** What a device reported with a clock that was off is recorded at the corrected time and marked. */
function markDeviceClock(rows: Rows, sent: Sent, at: Circumstances): void {
  if (at.skewMs === 0 || (sent.input as { at?: number }).at === undefined) return;
  const { jobId, vehicleId } = sent.input as { jobId?: string; vehicleId?: string };
  const minutes = Math.round(at.skewMs / 60_000);
  flag(rows, at, 'time.deviceClock', { jobId: jobId ?? null, vehicleId: vehicleId ?? null }, { minutes });
}

function entryOf(
  opened: OpenedCommand,
  { sender, sent, at }: { readonly sender: Sender; readonly sent: Sent; readonly at: Circumstances },
  outcome: Outcome,
  after: Rows,
): Decided {
  const edits = after.changes();
  const seq = opened.head.seq + 1;
  const subjects = subjectsOf(edits);
  const messages = changeMessages({
    seq,
    sent,
    at,
    subjects,
    differences: differences(opened.rows, after, edits, at.now),
  });
  const flags = edits.filter((edit) => edit.table === 'flag' && edit.before === null).map((edit) => edit.after);
  const cards = edits.filter(
    (edit) => edit.table === 'report' && (edit.after as { state?: string }).state === 'contested',
  );
  const body = JSON.stringify({
    seq,
    at: new Date(at.now).toISOString(),
    created: outcome.created ?? {},
    flags: flags.map((row) => (row as unknown as { rule: string }).rule),
    contested: cards.map((edit) => edit.after.id),
  });
  return {
    edits,
    entry: {
      seq,
      configSeq: touchesShop(edits) ? seq : opened.head.configSeq,
      recordedAt: at.now,
      effectiveAt: at.effectiveAt,
      personId: at.by.personId,
      device: at.device,
      command: sent.name,
      key: sent.key,
      sender: sender.personId,
      fingerprint: sent.fingerprint,
      subjects,
      facts: outcome.facts,
      staff: messages.staff,
      wall: messages.wall,
      body,
    },
  };
}
