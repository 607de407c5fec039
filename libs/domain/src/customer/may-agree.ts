import { compare } from '../kernel/amounts.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

/** Whether the contact may give the go-ahead for this amount, in the shop's currency; whoever has ended may for none. */
export function mayAgree(_rows: Rows, contact: Row<'contact'>, amount: string): boolean {
  if (contact.void || contact.endedAt !== null) return false;
  if (contact.mayAgreeAny) return true;
  return contact.mayAgreeUpTo !== null && compare(contact.mayAgreeUpTo, amount) >= 0;
}
