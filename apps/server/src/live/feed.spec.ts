import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { LoggedChange, LogReader } from '../engine/ports.js';
import { Feed, type Heard } from './feed.js';

/** A log in memory that keeps what comes after `kept`; each read takes a turn of the event loop. */
class MemoryLog implements LogReader {
  seq = 0;
  kept = 0;
  epoch = 'first';
  reads = 0;

  async head() {
    await Promise.resolve();
    return { epoch: this.epoch, seq: this.seq, now: 0 };
  }

  async changesAfter(_shopId: string, after: number, _audience: string, limit: number): Promise<LoggedChange[] | null> {
    this.reads += 1;
    await Promise.resolve();
    if (after < this.kept || after > this.seq) return null;
    const count = Math.min(limit, this.seq - after);
    return Array.from({ length: count }, (_, at) => ({ seq: after + 1 + at, text: '{}' }));
  }
}

async function started(log: MemoryLog): Promise<{ feed: Feed; heard: Heard[]; numbers: () => number[] }> {
  const feed = await Feed.start('shop', 'staff', log);
  if (feed === null) throw new Error('no feed');
  const heard: Heard[] = [];
  feed.listen((each) => heard.push(each));
  const numbers = () => heard.flatMap((each) => (each.kind === 'changes' ? each.changes.map(({ seq }) => seq) : []));
  return { feed, heard, numbers };
}

const upTo = (last: number) => Array.from({ length: last }, (_, at) => at + 1);

describe('a feed', () => {
  it('tells each change once and in order, however commits and looks fall together', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.constantFrom('commit', 'look', 'turn'), { maxLength: 60 }), async (steps) => {
        const log = new MemoryLog();
        const { feed, numbers } = await started(log);
        const looks: Promise<void>[] = [];
        for (const step of steps) {
          if (step === 'commit') log.seq += 1;
          else if (step === 'look') looks.push(feed.advance());
          else await Promise.resolve();
        }
        await Promise.all([...looks, feed.advance()]);
        expect(numbers()).toEqual(upTo(log.seq));
        expect(feed.seq).toBe(log.seq);
      }),
    );
  });

  it('has told everything that was committed before a look when the look ends, even one that began in another', async () => {
    const log = new MemoryLog();
    const { feed, numbers } = await started(log);
    log.seq = 1;
    const first = feed.advance();
    await Promise.resolve();
    log.seq = 2;
    await feed.advance();
    expect(numbers()).toEqual([1, 2]);
    await first;
  });

  it('shares one further reading among all looks that come while it reads', async () => {
    const log = new MemoryLog();
    const { feed } = await started(log);
    await Promise.all(Array.from({ length: 50 }, () => feed.advance()));
    expect(log.reads).toBe(2);
  });

  it('reads on until it is level where more waits than one reading takes', async () => {
    const log = new MemoryLog();
    const { feed, numbers } = await started(log);
    log.seq = 2_500;
    await feed.advance();
    expect(numbers()).toEqual(upTo(2_500));
  });

  it('says that it is lost and stands at the head where the next change is no longer kept', async () => {
    const log = new MemoryLog();
    const { feed, heard, numbers } = await started(log);
    log.seq = 9;
    log.kept = 5;
    log.epoch = 'second';
    await feed.advance();
    expect(heard).toEqual([{ kind: 'lost' }]);
    expect([feed.seq, feed.epoch]).toEqual([9, 'second']);
    log.seq = 10;
    await feed.advance();
    expect(numbers()).toEqual([10]);
  });
});
