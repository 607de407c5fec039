/** Who gave the go-ahead, where it is a contact of the customer: what that contact may agree to holds. */
import { mayAgree } from '../customer/may-agree.js';
import { compare } from '../kernel/amounts.js';
import { foldKey } from '../kernel/fold.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

/** The contacts of the visit's customer who go by that name. */
function contactsNamed(rows: Rows, job: Row<'job'>, name: string): Row<'contact'>[] {
  const key = foldKey(name);
  return rows.list('contact', (one) => one.customerId === job.customerId && foldKey(one.name) === key);
}

/**
 * The limit that is in the way of this amount, or null where none is. Without an amount a contact with a limit agrees up
 * to that limit, which `agreesUpTo` names. Of several contacts with one name the one with the most to say counts.
 */
export function contactLimitBelow(rows: Rows, job: Row<'job'>, name: string, amount: string | null): string | null {
  const contacts = contactsNamed(rows, job, name);
  if (contacts.length === 0 || contacts.some((one) => mayAgree(rows, one, amount ?? '0'))) return null;
  return limitOf(contacts) ?? '0';
}

/** What a contact of that name may agree to at most where no amount was said; null where there is no such limit. */
export function agreesUpTo(rows: Rows, job: Row<'job'>, name: string): string | null {
  const contacts = contactsNamed(rows, job, name);
  if (contacts.some((one) => one.mayAgreeAny && one.endedAt === null)) return null;
  return limitOf(contacts);
}

function limitOf(contacts: readonly Row<'contact'>[]): string | null {
  const limits = contacts.flatMap((one) =>
    one.endedAt === null && one.mayAgreeUpTo !== null ? [one.mayAgreeUpTo] : [],
  );
  return limits.reduce<string | null>((most, one) => (most === null || compare(one, most) > 0 ? one : most), null);
}
