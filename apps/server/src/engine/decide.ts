/** One command decided on what its shop shows: who may, when it was, on which version, the rule, what follows from it. */
import { differences } from '@holdfast/board';
import { commands, may, mayDo } from '@holdfast/contract';
import {
  type By,
  type Circumstances,
  type CommandInputs,
  type CommandName,
  flag,
  flagClosedMonth,
  type Outcome,
  Refused,
  type Rows,
  refuse,
  rules,
  settle,
} from '@holdfast/domain';
import { changeMessages, subjectsOf } from './change-message.js';
import { checkVersion } from './check-version.js';
import { effectiveTime } from './effective-time.js';
import type { Change, OpenedCommand, Sender, Sent } from './ports.js';
import { touchesShop } from './shop-tables.js';

/** Pure but for `newId`: what the command changes with its line of the log, or why it is refused. */
export function decided<N extends CommandName>(
  opened: OpenedCommand,
  sender: Sender,
  sent: Sent<N>,
  newId: () => string,
): Change | Refused {
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
    ...(opened.staged ? { staged: opened.staged } : {}),
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
  markClosedMonth(after, sent, at);
  settle(after, at, { whole: rules[sent.name].needs(sent.input).tables === undefined });
  return entryOf(opened, { sender, sent, at }, outcome, after);
}

/** What a device reported with a clock that was off is recorded at the corrected time and marked. */
function markDeviceClock(rows: Rows, sent: Sent, at: Circumstances): void {
  if (at.skewMs === 0 || (sent.input as { at?: number }).at === undefined) return;
  const { jobId, vehicleId } = sent.input as { jobId?: string; vehicleId?: string };
  const minutes = Math.round(at.skewMs / 60_000);
  flag(rows, at, 'time.deviceClock', { jobId: jobId ?? null, vehicleId: vehicleId ?? null }, { minutes });
}

/** A report that came out of an outbox after its month was closed is kept and marked. */
function markClosedMonth(rows: Rows, sent: Sent, at: Circumstances): void {
  if ((sent.input as { at?: number }).at === undefined) return;
  const { jobId, vehicleId } = sent.input as { jobId?: string; vehicleId?: string };
  flagClosedMonth(rows, at, { jobId: jobId ?? null, vehicleId: vehicleId ?? null });
}

function entryOf(
  opened: OpenedCommand,
  { sender, sent, at }: { readonly sender: Sender; readonly sent: Sent; readonly at: Circumstances },
  outcome: Outcome,
  after: Rows,
): Change {
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
    erases: edits.some(({ table, before }) => table === 'erasure' && before === null),
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
