/**
 * any/ hides what it takes to go back on something: undoing one's own change, settling what two people say of one
 * moment, and having looked at what was flagged. It guarantees that rule 1 holds after it as before, that nothing is deleted, and that nothing which others have
 * built on is taken from under them.
 */
import type { Family } from '../kernel/family.js';
import { clearFlag } from './clear-flag.js';
import { settleCard } from './settle-card.js';
import { takeBack } from './take-back.js';

export const anyFamily: Family<'takeBack' | 'settleCard' | 'clearFlag'> = { takeBack, settleCard, clearFlag };
