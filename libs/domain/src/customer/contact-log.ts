import type { RecordContact } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { hasRole, settingOn, todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row, TableName } from '../tables/tables.js';

/** Technician and parts clerk keep it where the shop's setting of the day says so, as with go-aheads. */
function mayNotKeep(rows: Rows, at: Circumstances): Refused | null {
  if (hasRole(at.by, 'owner', 'manager', 'desk')) return null;
  return settingOn(rows, todayOf(at)).floorRecordsGoAheads ? null : refuse('contactEntry.notYours');
}

function badReference(rows: Rows, input: RecordContact): Refused | null {
  const { vehicleId, contactId } = input;
  if (!live(rows, 'vehicle', vehicleId)) return notThere('vehicle', vehicleId);
  if (contactId !== undefined && !live(rows, 'contact', contactId)) return notThere('contact', contactId);
  const named = { job: input.jobId, followUp: input.followUpId, call: input.callId } as const;
  for (const [table, id] of Object.entries(named) as [TableName & keyof typeof named, string | undefined][]) {
    if (id === undefined) continue;
    const row = live(rows, table, id);
    if (!row) return notThere(table, id);
    if (row.vehicleId !== vehicleId) return refuse('contactEntry.ofOtherVehicle', { table, id });
  }
  return null;
}

/** Who was reached said something; nobody tries again in the past. */
function badlySaid({ reached, answer, nextTryAt }: RecordContact, at: Circumstances): Refused | null {
  if (reached && answer === undefined) return refuse('contactEntry.answerMissing');
  if (nextTryAt === undefined || nextTryAt >= at.effectiveAt) return null;
  return refuse('contactEntry.nextTryPast', { nextTryAt: new Date(nextTryAt).toISOString() });
}

function noteCall(rows: Rows, at: Circumstances, call: Row<'call'>, input: RecordContact): void {
  if (call.endedAt !== null) return;
  const { reached, nextTryAt = null } = input;
  const ends = reached && nextTryAt === null;
  rows.change('call', call.id, ends ? { nextTryAt, endedAt: at.effectiveAt, endedHow: 'logged' } : { nextTryAt });
}

/** Of what it is: named with it, or what its call is about. */
function subjectsOf({ vehicleId, jobId, followUpId }: RecordContact, call: Row<'call'> | undefined) {
  return {
    vehicleId,
    jobId: jobId ?? call?.jobId ?? null,
    followUpId: followUpId ?? call?.followUpId ?? null,
    callId: call?.id ?? null,
  };
}

/**
 * A fact: one entry of the contact log. The call it names ends with it when somebody was reached and no next try was
 * agreed; else the call waits until then (`nextTryAt`, epoch ms). What was said on a call that has ended meanwhile is kept too.
 */
export const recordContact: CommandRule<'recordContact'> = {
  needs: ({ vehicleId, jobId, followUpId, callId, contactId }) => ({
    vehicles: [vehicleId],
    ...(jobId === undefined ? {} : { jobs: [jobId] }),
    ...(followUpId === undefined ? {} : { followUps: [followUpId] }),
    ...(callId === undefined ? {} : { calls: [callId] }),
    ...(contactId === undefined ? {} : { contacts: [contactId] }),
  }),
  decide(rows, input, at) {
    const { contactEntryId = null, way, reached, moveOf } = input;
    const refused = mayNotKeep(rows, at) ?? badReference(rows, input);
    if (refused) return refused;
    if (rows.find('contactEntry', contactEntryId)) return refuse('contactEntry.alreadyThere', { contactEntryId });
    const badly = badlySaid(input, at);
    if (badly) return badly;
    const call = live(rows, 'call', input.callId);
    const of = subjectsOf(input, call);
    const { contactId = null, withName = null, answer = null, nextTryAt = null } = input;
    const said = { contactId, way, withName, reached, answer, nextTryAt, moveOf };
    const entry = rows.add('contactEntry', { id: contactEntryId ?? at.newId(), ...recordedBy(at), ...of, ...said });
    if (call) noteCall(rows, at, call, input);
    return { facts: { ...of, way, reached }, created: { contactEntry: entry.id } };
  },
};
