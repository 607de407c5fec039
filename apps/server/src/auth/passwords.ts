import { hash as argon2Hash, verify as argon2Verify } from '@node-rs/argon2';
import { createHash, createHmac } from 'node:crypto';
import { limitedTo } from './limited-to.js';

/** A password as it is stored: the argon2id text, and which pepper went into it. */
export interface StoredPassword {
  readonly hash: string;
  readonly pepperId: string;
}

export interface Passwords {
  hash(password: string): Promise<StoredPassword>;
  /** Without a stored one it takes as long and says false. */
  verify(stored: StoredPassword | null, password: string): Promise<boolean>;
}

/** RFC 9106, second recommended set with one lane: 64 MiB, three passes. About 70 ms on a small machine. */
const cost = { memoryCost: 65_536, timeCost: 3, parallelism: 1 };
/** Two at once, fifty waiting: a flood of sign-ins must take neither all cores nor all memory. */
const atOnce = 2;
const mostWaiting = 50;

/**
 * Hashes with argon2id over an HMAC-SHA-256 of the password under `pepper`, which is kept outside the database, so that
 * a copy of the database alone is worth nothing. Passwords are normalised to NFC (NIST SP 800-63B-4, 3.1.1.2) and never
 * trimmed. Rejects with `Overloaded` when too many wait.
 */
export function passwordsWith(pepper: string): Passwords {
  const pepperId = createHash('sha256').update(`pepper ${pepper}`).digest('hex').slice(0, 12);
  const inTurn = limitedTo(atOnce, mostWaiting);
  const peppered = (password: string) =>
    createHmac('sha256', pepper).update(password.normalize('NFC')).digest('base64url');
  const hash = (password: string) => inTurn(() => argon2Hash(peppered(password), cost));
  // Made ahead, so that the first sign-in of somebody unknown takes no longer than any other.
  const nobody = hash(`nobody ${pepperId}`);
  return {
    async hash(password) {
      return { hash: await hash(password), pepperId };
    },
    async verify(stored, password) {
      const usable = stored !== null && stored.pepperId === pepperId;
      const against = usable ? stored.hash : await nobody;
      const matches = await inTurn(() => argon2Verify(against, peppered(password)));
      return matches && usable;
    },
  };
}
