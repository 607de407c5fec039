/** More was asked for at once than is good for the machine; asking again in a moment is fine. */
export class Overloaded extends Error {
  override readonly name = 'Overloaded';
}

/** Runs at most `atOnce` pieces of work, lets `mostWaiting` wait in order, and rejects the rest with `Overloaded`. */
export function limitedTo(atOnce: number, mostWaiting: number): <T>(work: () => Promise<T>) => Promise<T> {
  let running = 0;
  const waiting: (() => void)[] = [];
  return async (work) => {
    if (running >= atOnce) {
      if (waiting.length >= mostWaiting) throw new Overloaded('Too much is waiting already.');
      // Whoever ends hands its place over, so the count stays.
      await new Promise<void>((resolve) => waiting.push(resolve));
    } else {
      running += 1;
    }
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next === undefined) running -= 1;
      else next();
    }
  };
}
