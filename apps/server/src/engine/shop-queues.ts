/** One command of a shop at a time in this process; those of different shops do not wait for each other. */
export function makeShopQueues() {
  const tails = new Map<string, Promise<unknown>>();
  return {
    run<T>(shopId: string, work: () => Promise<T>): Promise<T> {
      const before = tails.get(shopId) ?? Promise.resolve();
      const mine = before.then(work, work);
      const tail = mine
        .catch(() => undefined)
        .finally(() => {
          if (tails.get(shopId) === tail) tails.delete(shopId);
        });
      tails.set(shopId, tail);
      return mine;
    },
  };
}
