/**
 * Commands of a shop in the order they came, a few of them at a time. What waits while the shop's transactions are under
 * way is taken together into the next one, except for commands that name something of one that stands before them: those
 * keep their order and their own turn. Shops do not wait for each other here at all.
 */

/**
 * While one transaction of a shop commits, the next one already stands at the lock with its reads behind it, so that
 * neither PostgreSQL nor this process waits for the other. More than two only wait on each other.
 */
const atOnce = 2;
/** More in one transaction gain little and make the first of them wait for the last. */
const mostTogether = 16;

export interface Queued {
  /** What the command names: it shares a transaction with no other that names one of them. */
  readonly names: ReadonlySet<string>;
  /** Never shares a transaction. */
  readonly alone: boolean;
}

interface Queue<T> {
  running: number;
  gathering: boolean;
  waiting: T[];
}

export interface ShopQueues<T> {
  add(shopId: string, item: T): void;
}

/** `carryOut` never rejects; it gives back the ones that must be taken again, which then stand first. */
export function makeShopQueues<T extends Queued>(
  carryOut: (shopId: string, together: readonly T[]) => Promise<readonly T[]>,
): ShopQueues<T> {
  const queues = new Map<string, Queue<T>>();

  function take(shopId: string, queue: Queue<T>): void {
    queue.gathering = false;
    const [together, left] = nextOf(queue.waiting);
    queue.waiting = left;
    queue.running += 1;
    void carryOut(shopId, together).then((again) => {
      queue.running -= 1;
      queue.waiting.unshift(...again);
      if (queue.waiting.length > 0) gather(shopId, queue);
      else if (queue.running === 0) queues.delete(shopId);
    });
  }

  /** The requests that arrived together are read one after the other: the last of them is waited for. */
  function gather(shopId: string, queue: Queue<T>): void {
    if (queue.gathering || queue.running >= atOnce) return;
    queue.gathering = true;
    setImmediate(() => take(shopId, queue));
  }

  return {
    add(shopId, item) {
      let queue = queues.get(shopId);
      if (!queue) queues.set(shopId, (queue = { running: 0, gathering: false, waiting: [] }));
      queue.waiting.push(item);
      gather(shopId, queue);
    },
  };
}

/** Those that go together now, and the rest; both in order. */
function nextOf<T extends Queued>(waiting: readonly T[]): [together: T[], left: T[]] {
  const together: T[] = [];
  const left: T[] = [];
  const named = new Set<string>();
  for (const item of waiting) {
    const first = together.length === 0;
    const fits = first || (!item.alone && together.length < mostTogether && isFree(item, named));
    (fits ? together : left).push(item);
    for (const name of item.names) named.add(name);
    if (first && item.alone) return [together, waiting.slice(1)];
  }
  return [together, left];
}

function isFree({ names }: Queued, named: ReadonlySet<string>): boolean {
  for (const name of names) if (named.has(name)) return false;
  return true;
}
