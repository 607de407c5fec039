/**
 * customer/ hides who owns and runs vehicles, what their people may do, and what was said to them. It guarantees that a
 * standing go-ahead is one customer's and covers what it says, and that a call ends only by what was said in it.
 */
import type { CustomerInputs } from '../inputs.js';
import type { Family } from '../kernel/family.js';
import { recordContact } from './contact-log.js';
import { addContact, addCustomer, changeContact, changeCustomer } from './customers.js';
import { endStandingGoAhead, giveStandingGoAhead } from './standing-go-aheads.js';

export const customerFamily: Family<keyof CustomerInputs> = {
  addCustomer,
  changeCustomer,
  addContact,
  changeContact,
  giveStandingGoAhead,
  endStandingGoAhead,
  recordContact,
};
