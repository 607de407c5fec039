/**
 * At most two commands of a shop at a time in this process: while one commits, the next one already stands at the lock
 * with its reads behind it, so that neither PostgreSQL nor this process waits for the other. More than two only wait on
 * each other. Those of different shops do not wait for each other here at all.
 */
const atOnce = 2;

interface Queue {
  running: number;
  readonly waiting: (() => void)[];
}

export function makeShopQueues() {
  const queues = new Map<string, Queue>();

  function queueOf(shopId: string): Queue {
    let queue = queues.get(shopId);
    if (!queue) queues.set(shopId, (queue = { running: 0, waiting: [] }));
    return queue;
  }

  return {
    async run<T>(shopId: string, work: () => Promise<T>): Promise<T> {
      const queue = queueOf(shopId);
      if (queue.running >= atOnce) await new Promise<void>((resolve) => queue.waiting.push(resolve));
      else queue.running += 1;
      try {
        return await work();
      } finally {
        const next = queue.waiting.shift();
        if (next) next();
        else {
          queue.running -= 1;
          if (queue.running === 0) queues.delete(shopId);
        }
      }
    },
  };
}
