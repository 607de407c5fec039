import type { Audience, LogReader, Wake } from '../engine/ports.js';
import { Feed, type Listener } from './feed.js';

/** The word between processes, as read/log-notices.ts sends and hears it. */
export interface Notices {
  tell(shopId: string, seq: number): void;
  listen(heard: (notice: { readonly shopId: string; readonly seq: number } | undefined) => void): Promise<void>;
}

export interface Feeds {
  /** To be called after each commit of this process. */
  readonly wake: Wake;
  /**
   * Listens to the feed of a shop for an audience, which is started where it does not run; null where there is no such
   * shop. What was committed before may not have been told yet: `advance` sees to it.
   */
  follow(shopId: string, audience: Audience, listener: Listener): Promise<Following | null>;
  /** Begins to listen to the other processes and to look by itself. */
  start(): Promise<void>;
  stop(): void;
}

export interface Following {
  readonly feed: Feed;
  stop(): void;
}

export interface FeedsParts {
  readonly reader: LogReader;
  readonly notices: Notices;
  /** A feed could not read its log; it tries again by itself. */
  readonly failed: (failure: unknown) => void;
}

/** A feed looks this often unasked: a notice is lost with the process that should have sent it. */
const lookEveryMs = 3_000;
const audiences: readonly Audience[] = ['staff', 'wall'];

/** The feeds of this process: one for each shop and audience that somebody listens to, dropped when nobody does. */
export function makeFeeds({ reader, notices, failed }: FeedsParts): Feeds {
  const running = new Map<string, Feed>();
  const starting = new Map<string, Promise<Feed | null>>();
  let looking: NodeJS.Timeout | undefined;

  const advance = (feed: Feed) => {
    feed.advance().catch(failed);
  };
  const hear = (shopId: string, seq: number) => {
    for (const audience of audiences) {
      const feed = running.get(keyOf(shopId, audience));
      if (feed !== undefined && seq > feed.seq) advance(feed);
    }
  };
  const look = () => {
    for (const [key, feed] of running) {
      if (feed.hasListeners) advance(feed);
      else running.delete(key);
    }
  };
  const begin = (key: string, shopId: string, audience: Audience) => {
    const begun = Feed.start(shopId, audience, reader).finally(() => starting.delete(key));
    starting.set(key, begun);
    return begun;
  };

  return {
    wake(shopId, seq) {
      notices.tell(shopId, seq);
      hear(shopId, seq);
    },
    async follow(shopId, audience, listener) {
      const key = keyOf(shopId, audience);
      const feed = running.get(key) ?? (await (starting.get(key) ?? begin(key, shopId, audience)));
      if (feed === null) return null;
      // It may have been dropped since, having had no listener yet.
      running.set(key, feed);
      return { feed, stop: feed.listen(listener) };
    },
    async start() {
      looking = setInterval(look, lookEveryMs).unref();
      await notices.listen((notice) => {
        if (notice === undefined) look();
        else hear(notice.shopId, notice.seq);
      });
    },
    stop() {
      clearInterval(looking);
      running.clear();
    },
  };
}

function keyOf(shopId: string, audience: Audience): string {
  return `${shopId}:${audience}`;
}
