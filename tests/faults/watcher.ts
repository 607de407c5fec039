/** A client that follows the live board through every fault with the same library that the screens use. */
import { apply, type Board, type BoardChange, fromSnapshot, prune, type Snapshot } from '@holdfast/board';
import { contractVersion, liveEvents, livePath } from '@holdfast/contract';
import { isDeepStrictEqual } from 'node:util';
import { io } from 'socket.io-client';
import { request } from '../kit/server-process.js';

export interface Watcher {
  /** Waits until the board is at this number or beyond, then compares it with a fresh snapshot. */
  isLevel(seq: number): Promise<boolean>;
  close(): void;
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

export function watchBoard(url: string, token: string): Watcher {
  let board: Board | null = null;
  let loading = false;
  const socket = io(url, {
    path: livePath,
    transports: ['websocket'],
    extraHeaders: { authorization: `Bearer ${token}` },
    reconnectionDelay: 100,
    reconnectionDelayMax: 1_000,
  });
  const resume = () => {
    if (board) socket.emit(liveEvents.resume, { epoch: board.epoch, after: board.seq, contract: contractVersion });
    else void load();
  };
  const load = async (): Promise<void> => {
    if (loading) return;
    loading = true;
    try {
      const { status, body } = await request<Snapshot>('GET', `${url}/api/board`, { token });
      if (status === 200) board = fromSnapshot(body, 'staff');
    } catch {
      await pause(200);
    }
    loading = false;
    resume();
  };
  socket.on('connect', resume);
  socket.on(liveEvents.snapshotNeeded, () => {
    board = null;
    void load();
  });
  socket.on(liveEvents.change, (change: BoardChange) => {
    if (!board) return;
    const next = apply(board, change);
    if (next === 'missing') resume();
    else board = next;
  });
  socket.on(liveEvents.beat, ({ seq }: { seq: number }) => {
    if (board && seq > board.seq) resume();
  });
  return {
    async isLevel(seq) {
      for (let tries = 0; tries < 200 && (board?.seq ?? -1) < seq; tries += 1) await pause(100);
      const { body } = await request<Snapshot & { now: string }>('GET', `${url}/api/board`, { token });
      const now = Date.parse(body.now);
      return board !== null && sameBoards(prune(board, now), prune(fromSnapshot(body, 'staff'), now));
    },
    close: () => socket.close(),
  };
}

/** Both have the same rows, whatever order they came in. */
export function sameBoards(a: Board, b: Board): boolean {
  return a.epoch === b.epoch && a.seq === b.seq && isDeepStrictEqual(plain(a), plain(b));
}

export function plain(board: Board): Record<string, Record<string, unknown>> {
  const tables = Object.entries({ ...board.tables }) as [string, ReadonlyMap<string, unknown>][];
  return Object.fromEntries(tables.map(([table, rows]) => [table, Object.fromEntries(rows)]));
}
