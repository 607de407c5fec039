/**
 * Word between the server processes that a shop's log has grown. Sent outside the transaction and gathered for a few
 * milliseconds, because inside it a NOTIFY cost half of the throughput over many shops; so a word can be lost with the
 * process that should send it, and nobody may rest on it: it only saves the wait for the next look at the table.
 */
import type { Database } from '../database/pools.js';

/** Shop and number; without them: some may have been missed, look at all of them. */
export type Notice = { readonly shopId: string; readonly seq: number } | undefined;

export interface LogNotices {
  /** Tells the other processes, soon. Never throws. */
  tell(shopId: string, seq: number): void;
  /** Calls `heard` for what any process told, this one included. */
  listen(heard: (notice: Notice) => void): Promise<void>;
}

const channel = 'shop_changes';
/** After a quiet moment the word goes out soon, */
const gatherMs = 5;
/** while many change, not more often than this: each word is a transaction with a commit of its own. */
const pauseMs = 30;

export function makeLogNotices(database: Pick<Database, 'app' | 'listen'>): LogNotices {
  let gathered = new Map<string, number>();
  let sentAt = Number.NEGATIVE_INFINITY;

  const send = () => {
    sentAt = performance.now();
    const notices = [...gathered].map(([shopId, seq]) => `${shopId}:${seq}`);
    gathered = new Map();
    const sent = database.app.query({
      name: 'tell-changes',
      text: `SELECT pg_notify('${channel}', payload) FROM unnest($1::text[]) AS payload`,
      values: [notices],
    });
    sent.catch(() => undefined);
  };

  return {
    tell(shopId, seq) {
      if (gathered.size === 0) setTimeout(send, Math.max(gatherMs, sentAt + pauseMs - performance.now()));
      gathered.set(shopId, Math.max(seq, gathered.get(shopId) ?? 0));
    },
    async listen(heard) {
      await database.listen(channel, (payload) => {
        heard(payload === undefined ? undefined : noticeOf(payload));
      });
    },
  };
}

function noticeOf(payload: string): Notice {
  const at = payload.lastIndexOf(':');
  const seq = Number(payload.slice(at + 1));
  return at > 0 && Number.isSafeInteger(seq) ? { shopId: payload.slice(0, at), seq } : undefined;
}
