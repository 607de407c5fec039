/**
 * live/ hides how word of a change gets from the log of a shop to everybody who looks: the feeds that read the log, the
 * sockets, the long poll. It guarantees that whoever says which number they have gets every change after it exactly once
 * and in order, or is told to take a snapshot; that nobody gets what their audience may not see; and that neither a
 * signed-out session nor a client that does not read keeps a socket. Nothing is written here, and the table is the only
 * truth: whatever wakes a feed says no more than that it is time to look.
 *
 * A feed follows the log of one shop for one audience while anybody listens. It is woken in memory by a commit of this
 * process, by a notice of another one, and by a slow timer. Each time it reads what comes after its number, once, and
 * hands it on in one go, before anything else can run: so there is no moment between "caught up" and "live".
 */
import type { Audience, LoggedChange, LogReader } from '../engine/ports.js';

/** What listeners hear: changes in order, each `seq` one more than the last; or that the log cannot be followed on. */
export type Heard = { readonly kind: 'changes'; readonly changes: readonly LoggedChange[] } | { readonly kind: 'lost' };
export type Listener = (heard: Heard) => void;

/** Changes read from the log at a time. */
const atATime = 1_000;

export class Feed {
  private number = 0;
  private log = '';
  private running: Promise<void> | null = null;
  private following: Promise<void> | null = null;
  private readonly listeners = new Set<Listener>();

  private constructor(
    readonly shopId: string,
    readonly audience: Audience,
    private readonly reader: LogReader,
  ) {}

  /** A feed that stands at the head of the log; null where there is no such shop. */
  static async start(shopId: string, audience: Audience, reader: LogReader): Promise<Feed | null> {
    const feed = new Feed(shopId, audience, reader);
    return (await feed.standAtHead()) ? feed : null;
  }

  /** The number of the last change that listeners were told. */
  get seq(): number {
    return this.number;
  }

  /** Names the log that the numbers count in; a restore begins another one. */
  get epoch(): string {
    return this.log;
  }

  get hasListeners(): boolean {
    return this.listeners.size > 0;
  }

  /** Listeners are called at once, one after the other, and must not throw. Returns how to stop listening. */
  listen(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => {
      this.listeners.delete(listener);
    };
  }

  /**
   * Reads on. When it resolves, everything has been told that was committed before the call; calls that come while it
   * reads share one further reading.
   */
  advance(): Promise<void> {
    if (this.running === null) {
      this.running = this.readOn().finally(() => {
        this.running = null;
      });
      return this.running;
    }
    this.following ??= this.running
      .catch(() => undefined)
      .then(() => {
        this.following = null;
        return this.advance();
      });
    return this.following;
  }

  /** The log is another one now, or has lost what comes next: all listeners need a snapshot. */
  async restart(): Promise<void> {
    if (await this.standAtHead()) this.tell({ kind: 'lost' });
  }

  private async readOn(): Promise<void> {
    for (;;) {
      const changes = await this.changesAfter(this.number);
      const last = changes?.at(-1);
      if (changes === null || (last !== undefined && last.seq !== this.number + changes.length)) {
        await this.restart();
        return;
      }
      if (last === undefined) return;
      this.number = last.seq;
      this.tell({ kind: 'changes', changes });
      if (changes.length < atATime) return;
    }
  }

  /** A reader that found nothing and then a higher head, because a commit fell between, says null too: it is asked again. */
  private async changesAfter(after: number): Promise<LoggedChange[] | null> {
    const read = () => this.reader.changesAfter(this.shopId, after, this.audience, atATime);
    return (await read()) ?? (await read());
  }

  private async standAtHead(): Promise<boolean> {
    const head = await this.reader.head(this.shopId);
    if (head === null) return false;
    this.number = head.seq;
    this.log = head.epoch;
    return true;
  }

  private tell(heard: Heard): void {
    for (const listener of [...this.listeners]) listener(heard);
  }
}
