import { acceptsContract, beatEveryMs, liveEvents, may, mayRead, resume } from '@holdfast/contract';
import type { Role } from '@holdfast/domain';
import type { Server, Socket } from 'socket.io';
import { tokenOf } from '../auth/session-token.js';
import type { Session, Sessions, SessionsChanged } from '../auth/sessions.js';
import type { Audience, LogReader } from '../engine/ports.js';
import type { Feeds } from './feeds.js';
import { LiveRoom } from './live-room.js';

export interface LiveParts {
  readonly feeds: Feeds;
  readonly reader: LogReader;
  readonly sessions: Pick<Sessions, 'of' | 'onChanged'>;
  /** Open sockets of this process, for the metrics. */
  readonly counted: (count: number) => void;
  readonly failed: (failure: unknown) => void;
}

const mostOfSession = 20;
const mostOfProcess = 2_000;
/** A socket resumes at most once in this time; what it asks for sooner is answered then. */
const resumeEveryMs = 1_000;
/** A session that ran out tells nobody, so each socket's is looked at this often. */
const lookAtSessionsEveryMs = 60_000;

interface Held {
  readonly token: string;
  session: Session;
  audience: Audience;
  resumedAt: number;
  waiting: NodeJS.Timeout | undefined;
  turn: Promise<void>;
}

/** The wall screen alone is `wall`: no names, telephone numbers and prices. */
export function audienceOf(roles: readonly Role[]): Audience {
  return roles.every((role) => role === 'wallScreen') ? 'wall' : 'staff';
}

/** The sockets of one server process: who may have one, what they are sent, and when they are closed. */
export class LiveSockets {
  private readonly held = new WeakMap<Socket, Held>();
  private readonly rooms = new Map<string, Promise<LiveRoom | null>>();
  private readonly timers: NodeJS.Timeout[] = [];
  private io: Server | null = null;

  constructor(private readonly parts: LiveParts) {}

  /** Serves the sockets of `io`, which has to be made with `socketOptions`. */
  attach(io: Server): void {
    this.io = io;
    io.use((socket, next) => {
      this.admit(io, socket).then(() => next(), next);
    });
    io.on('connection', (socket) => this.welcome(io, socket));
    this.parts.sessions.onChanged((changed) => this.lookAtSessions(changed));
    this.timers.push(
      setInterval(() => this.beat(), beatEveryMs).unref(),
      setInterval(() => this.lookAtSessions(null), lookAtSessionsEveryMs).unref(),
    );
  }

  /** Closes every socket; clients come back to another process, or to this one when it is there again. */
  close(): void {
    for (const timer of this.timers) clearInterval(timer);
    this.io?.local.disconnectSockets(true);
    for (const room of this.rooms.values()) void room.then((open) => open?.close());
    this.rooms.clear();
  }

  private async admit(io: Server, socket: Socket): Promise<void> {
    if (io.engine.clientsCount > mostOfProcess) throw refused('server.busy');
    const said: unknown = socket.handshake.auth['token'];
    const token = typeof said === 'string' ? said : tokenOf(socket.request.headers);
    const session = token === null ? null : await this.parts.sessions.of(token);
    if (token === null || session === null) throw refused('session.missing');
    if (!may(session.person.roles, mayRead.board)) throw refused('read.mayNot');
    const audience = audienceOf(session.person.roles);
    this.held.set(socket, {
      token,
      session,
      audience,
      resumedAt: -Infinity,
      waiting: undefined,
      turn: Promise.resolve(),
    });
  }

  private welcome(io: Server, socket: Socket): void {
    const held = this.held.get(socket);
    const ofSession = `session:${held?.session.id ?? ''}`;
    if (held === undefined || (io.of('/').adapter.rooms.get(ofSession)?.size ?? 0) >= mostOfSession) {
      socket.disconnect(true);
      return;
    }
    void socket.join(ofSession);
    this.parts.counted(io.engine.clientsCount);
    socket.on(liveEvents.resume, (asked: unknown) => this.askedToResume(socket, held, asked));
    socket.on('disconnect', () => {
      clearTimeout(held.waiting);
      this.parts.counted(io.engine.clientsCount);
    });
    // It may have ended while the socket was being opened.
    this.lookAt(socket, held).catch(this.parts.failed);
  }

  /** The last one asked for within the time counts. */
  private askedToResume(socket: Socket, held: Held, asked: unknown): void {
    clearTimeout(held.waiting);
    const waitMs = Math.max(0, held.resumedAt + resumeEveryMs - performance.now());
    held.waiting = setTimeout(() => {
      held.resumedAt = performance.now();
      held.turn = held.turn
        .then(() => this.resume(socket, held, asked))
        .catch((failure: unknown) => {
          this.parts.failed(failure);
          // It connects again by itself and then finds the database there, or another process.
          socket.conn.close();
        });
    }, waitMs);
  }

  private async resume(socket: Socket, held: Held, asked: unknown): Promise<void> {
    const checked = resume.safeParse(asked);
    if (!checked.success || !acceptsContract(checked.data.contract)) {
      socket.emit(liveEvents.reloadNeeded);
      return;
    }
    const shopId = held.session.shop.id;
    await socket.leave(LiveRoom.nameOf(shopId, held.audience));
    const room = await this.roomOf(shopId, held.audience);
    if (room === null || !socket.connected) return;
    if (await room.bringLevel(socket, checked.data.epoch, checked.data.after)) await room.beatTo(socket);
    else socket.emit(liveEvents.snapshotNeeded);
  }

  private async roomOf(shopId: string, audience: Audience): Promise<LiveRoom | null> {
    const { io } = this;
    if (io === null) return null;
    const name = LiveRoom.nameOf(shopId, audience);
    const known = this.rooms.get(name);
    if (known !== undefined) return known;
    const opened = LiveRoom.open(shopId, audience, io, this.parts);
    this.rooms.set(name, opened);
    try {
      return await opened;
    } catch (failure) {
      this.rooms.delete(name);
      throw failure;
    }
  }

  private beat(): void {
    for (const [name, opening] of this.rooms) {
      opening
        .then(async (room) => {
          if (room?.isEmpty === false) {
            await room.beat();
            return;
          }
          room?.close();
          this.rooms.delete(name);
        })
        .catch(this.parts.failed);
    }
  }

  private lookAtSessions(changed: SessionsChanged): void {
    for (const socket of this.io?.of('/').sockets.values() ?? []) {
      const held = this.held.get(socket);
      if (held !== undefined && (changed === null || isOf(held.session, changed))) {
        this.lookAt(socket, held).catch(this.parts.failed);
      }
    }
  }

  /** Closes the socket of a session that is no more, and of one that belongs to another audience now. */
  private async lookAt(socket: Socket, held: Held): Promise<void> {
    const session = await this.parts.sessions.of(held.token, { use: false });
    if (session === null || audienceOf(session.person.roles) !== held.audience) socket.disconnect(true);
    else held.session = session;
  }
}

/** What a client finds in the `data` of its `connect_error`. */
function refused(code: string): Error {
  return Object.assign(new Error(code), { data: { code } });
}

function isOf(session: Session, changed: NonNullable<SessionsChanged>): boolean {
  return (
    session.shop.id === changed.shopId &&
    (changed.personId === null || session.person.id === changed.personId) &&
    (changed.sessionId === null || session.id === changed.sessionId)
  );
}
