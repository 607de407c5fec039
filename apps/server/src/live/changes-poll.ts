import { type ChangesQuery, mostChanges, type ReloadAnswer } from '@holdfast/contract';
import type { Audience, LogReader } from '../engine/ports.js';
import type { Feeds } from './feeds.js';

const reload = JSON.stringify({ reload: 'snapshot-needed' } satisfies ReloadAnswer);

/** The answer of `GET /api/changes` as JSON text; null where there is no such shop. `gone` ends the waiting early. */
export type PollChanges = (
  shopId: string,
  audience: Audience,
  query: ChangesQuery,
  gone: AbortSignal,
) => Promise<string | null>;

/**
 * The same changes without a socket, for networks that let none through: what comes after a number, or, where there is
 * nothing yet, what comes within the seconds asked for. Any process can answer any request.
 */
export function makePollChanges({ reader, feeds }: { readonly reader: LogReader; readonly feeds: Feeds }): PollChanges {
  return async (shopId, audience, { after, wait, epoch }, gone) => {
    const answer = async (): Promise<{ text: string; isEmpty: boolean } | null> => {
      const head = await reader.head(shopId);
      if (head === null) return null;
      if ((epoch !== undefined && epoch !== head.epoch) || after > head.seq) return { text: reload, isEmpty: false };
      const changes = after === head.seq ? [] : await reader.changesAfter(shopId, after, audience, mostChanges);
      if (changes === null) return { text: reload, isEmpty: false };
      const last = changes.at(-1)?.seq ?? after;
      const seq = Math.max(last, head.seq);
      const now = new Date(head.now).toISOString();
      const list = changes.map(({ text }) => text).join(',');
      const text = `{"epoch":"${head.epoch}","seq":${seq},"now":"${now}","changes":[${list}],"more":${String(last < seq)}}`;
      return { text, isEmpty: changes.length === 0 };
    };
    const first = await answer();
    if (first === null || !first.isEmpty || wait === 0) return first?.text ?? null;
    await nextWord(feeds, { shopId, audience, after }, AbortSignal.any([gone, AbortSignal.timeout(wait * 1000)]));
    return (await answer())?.text ?? null;
  };
}

/** Resolves when there is something after the number, or when `enough` says so. */
async function nextWord(
  feeds: Feeds,
  { shopId, audience, after }: { readonly shopId: string; readonly audience: Audience; readonly after: number },
  enough: AbortSignal,
): Promise<void> {
  let heard = () => {};
  const word = new Promise<void>((resolve) => {
    heard = resolve;
  });
  enough.addEventListener('abort', heard, { once: true });
  const following = await feeds.follow(shopId, audience, () => heard());
  if (following === null) return;
  try {
    await following.feed.advance();
    if (following.feed.seq > after) return;
    if (!enough.aborted) await word;
  } finally {
    following.stop();
  }
}
