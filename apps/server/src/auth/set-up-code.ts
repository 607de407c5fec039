import { createHash, randomInt, timingSafeEqual } from 'node:crypto';

/**
 * The code that lets somebody make a shop on this server. On a server for trying it is told to everybody and makes
 * shops on clocks of their own. Otherwise it is printed at start, only as long as there is no real shop, and after ten
 * wrong tries it is spent until the next start.
 */
export interface SetUpCode {
  /** What is printed at start or told by the demo; null when no shop is awaited. */
  readonly text: string | null;
  readonly ownClock: boolean;
  /** `notAwaited` also once another process has made the shop. */
  check(text: string): Promise<'right' | 'wrong' | 'spent' | 'notAwaited'>;
  isAwaited(): Promise<boolean>;
}

const mostTries = 10;
/** Without signs that are taken for one another. */
const signs = '23456789ABCDEFGHJKMNPQRSTVWXYZ';

export async function makeSetUpCode(forTrying: boolean, hasRealShop: () => Promise<boolean>): Promise<SetUpCode> {
  const text = forTrying || !(await hasRealShop()) ? newCode() : null;
  const isAwaited = async () => text !== null && (forTrying || !(await hasRealShop()));
  let wrong = 0;
  return {
    text,
    ownClock: forTrying,
    isAwaited,
    async check(said) {
      if (text === null || !(await isAwaited())) return 'notAwaited';
      if (!forTrying && wrong >= mostTries) return 'spent';
      if (timingSafeEqual(digest(said), digest(text))) return 'right';
      wrong += 1;
      return 'wrong';
    },
  };
}

/** Four groups of four: 78 bits. */
function newCode(): string {
  const group = () => Array.from({ length: 4 }, () => signs.charAt(randomInt(signs.length))).join('');
  return [group(), group(), group(), group()].join('-');
}

function digest(code: string): Buffer {
  return createHash('sha256')
    .update(code.toUpperCase().replace(/[^A-Z0-9]/g, ''))
    .digest();
}
