/**
 * any/ hides what it takes to go back on something: undoing one's own change, striking a wrong entry, settling what two
 * people say of one moment, and having looked at what was flagged. It guarantees that rule 1 holds after it as before,
 * that nothing is deleted, and that nothing which others have built on is taken from under them. Here as well: two records
 * that are one become one, and a customer's personal data are overwritten while the account of the work stays.
 */
import type { Family } from '../kernel/family.js';
import { clearFlag } from './clear-flag.js';
import { erasePersonalData } from './erase-personal-data.js';
import { mergeCustomers, mergeVehicles } from './merge.js';
import { settleCard } from './settle-card.js';
import { strikeEntry } from './strike-entry.js';
import { takeBack } from './take-back.js';

export const anyFamily: Family<
  'takeBack' | 'settleCard' | 'clearFlag' | 'strikeEntry' | 'mergeVehicles' | 'mergeCustomers' | 'erasePersonalData'
> = {
  takeBack,
  settleCard,
  clearFlag,
  strikeEntry,
  mergeVehicles,
  mergeCustomers,
  erasePersonalData,
};
