import { type BeatMessage, type ChangeMessage, liveEvents, mostChanges } from '@holdfast/contract';
import type { Server, Socket } from 'socket.io';
import type { Audience, LoggedChange, LogReader } from '../engine/ports.js';
import { isTooSlow } from './backlog.js';
import type { Feed, Heard } from './feed.js';
import type { Feeds, Following } from './feeds.js';

/** The sockets of one shop and audience that are level with the feed: each message is encoded once for all of them. */
export class LiveRoom {
  private constructor(
    readonly shopId: string,
    private readonly audience: Audience,
    private readonly io: Server,
    private readonly reader: LogReader,
  ) {}

  private following: Following | null = null;
  private arriving = 0;

  /** Null where there is no such shop. */
  static async open(
    shopId: string,
    audience: Audience,
    io: Server,
    parts: { feeds: Feeds; reader: LogReader },
  ): Promise<LiveRoom | null> {
    const room = new LiveRoom(shopId, audience, io, parts.reader);
    room.following = await parts.feeds.follow(shopId, audience, (heard) => room.pass(heard));
    return room.following === null ? null : room;
  }

  /** From the session's shop, never from a word of the client. */
  static nameOf(shopId: string, audience: Audience): string {
    return `${shopId}:${audience}`;
  }

  /** Nobody is in it or about to be. */
  get isEmpty(): boolean {
    return this.arriving === 0 && this.sockets().length === 0;
  }

  close(): void {
    this.following?.stop();
    this.following = null;
  }

  /**
   * Brings a socket that has everything up to `after` level with the feed and puts it into the room. First the feed
   * reads to the head; then the socket gets what lies between its number and the feed's from the log, while what the
   * feed tells meanwhile is kept aside; then, with nothing able to run between, it gets that too and joins. False: it
   * needs a snapshot.
   */
  async bringLevel(socket: Socket, epoch: string, after: number): Promise<boolean> {
    const feed = this.following?.feed;
    if (feed === undefined) return false;
    this.arriving += 1;
    try {
      return await this.catchUp(socket, feed, epoch, after);
    } finally {
      this.arriving -= 1;
    }
  }

  private async catchUp(socket: Socket, feed: Feed, epoch: string, after: number): Promise<boolean> {
    await feed.advance();
    if (feed.epoch !== epoch || after > feed.seq || feed.seq - after > mostChanges) return false;
    const meanwhile: Heard[] = [];
    const stop = feed.listen((heard) => meanwhile.push(heard));
    try {
      const missed = await this.between(after, feed);
      if (missed === null) return false;
      const changes = [...missed];
      for (const heard of meanwhile) {
        if (heard.kind === 'lost') return false;
        changes.push(...heard.changes);
      }
      for (const change of changes) socket.emit(liveEvents.change, messageOf(change));
      void socket.join(this.name);
      return true;
    } finally {
      stop();
    }
  }

  /** Tells the room, and a client that is level but heard nothing, that the line stands and what time the shop has. */
  async beat(): Promise<void> {
    const message = await this.beatMessage();
    if (message !== null) this.io.local.to(this.name).emit(liveEvents.beat, message);
  }

  async beatTo(socket: Socket): Promise<void> {
    const message = await this.beatMessage();
    if (message !== null) socket.emit(liveEvents.beat, message);
  }

  private get name(): string {
    return LiveRoom.nameOf(this.shopId, this.audience);
  }

  private sockets(): Socket[] {
    const ids = this.io.of('/').adapter.rooms.get(this.name) ?? [];
    return [...ids].flatMap((id) => this.io.of('/').sockets.get(id) ?? []);
  }

  /** A beat never names a number before the changes up to it are on their way. */
  private async beatMessage(): Promise<BeatMessage | null> {
    const head = await this.reader.head(this.shopId);
    const feed = this.following?.feed;
    if (head === null || feed === undefined) return null;
    if (head.epoch !== feed.epoch) await feed.restart();
    else if (head.seq > feed.seq) await feed.advance();
    return { seq: feed.seq, now: new Date(head.now).toISOString() };
  }

  private async between(after: number, feed: Feed): Promise<readonly LoggedChange[] | null> {
    const count = feed.seq - after;
    if (count === 0) return [];
    const missed = await this.reader.changesAfter(this.shopId, after, this.audience, count);
    return missed?.length === count ? missed : null;
  }

  private pass(heard: Heard): void {
    for (const socket of this.sockets()) if (isTooSlow(socket)) socket.disconnect(true);
    const room = this.io.local.to(this.name);
    if (heard.kind === 'lost') {
      room.emit(liveEvents.snapshotNeeded);
      this.io.local.in(this.name).socketsLeave(this.name);
      return;
    }
    for (const change of heard.changes) room.emit(liveEvents.change, messageOf(change));
  }
}

/** The log holds the text of the message; socket.io wants the thing itself, and encodes it once for a whole room. */
function messageOf({ text }: LoggedChange): ChangeMessage {
  return JSON.parse(text) as ChangeMessage;
}
