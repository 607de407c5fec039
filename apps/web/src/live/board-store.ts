import { apply, type Audience, type Board, fromSnapshot, prune, rowsOf } from '@holdfast/board';
import {
  type BeatMessage,
  type BoardAnswer,
  type ChangeMessage,
  contractVersion,
  liveEvents,
  livePath,
} from '@holdfast/contract';
import { type Row, zoneAt } from '@holdfast/domain';
import { io, type Socket } from 'socket.io-client';
import { create } from 'zustand';

import { useShell } from '../shell/shell-state.js';
import { wearShop } from '../text/shop-settings.js';
import { call, ProblemAnswer } from './http.js';
import { touchReads } from './reads.js';

interface BoardState {
  /** Null until the first snapshot is here. */
  readonly board: Board | null;
  /** Shop time minus this device's clock, ms: the demo's clock may run apart, and tablets are off. */
  readonly offsetMs: number;
}

export const useBoardStore = create<BoardState>()(() => ({ board: null, offsetMs: 0 }));

/** Nothing heard for so long: the board says so. Beats come every 5 s. */
const staleAfterMs = 15_000;

interface Line {
  readonly audience: Audience;
  readonly socket: Socket;
  readonly watch: ReturnType<typeof setInterval>;
  heardAt: number;
  /** A snapshot is on its way; changes that come meanwhile wait. */
  loading: boolean;
  waiting: ChangeMessage[];
  readonly needs: (report: Row<'report'>) => boolean;
  readonly onSignedOut: () => void;
}

let line: Line | null = null;

/** `needs` says which contested reports this person is to settle. */
export function startBoard(
  audience: Audience,
  needs: (report: Row<'report'>) => boolean,
  onSignedOut: () => void,
): void {
  stopBoard();
  const socket = io({
    path: livePath,
    transports: ['websocket'],
    reconnectionDelay: 500,
    reconnectionDelayMax: 10_000,
    randomizationFactor: 1,
  });
  const mine: Line = {
    audience,
    socket,
    watch: setInterval(() => {
      watchHearing(mine);
    }, 1_000),
    heardAt: Date.now(),
    loading: false,
    waiting: [],
    needs,
    onSignedOut,
  };
  line = mine;
  socket.on('connect', () => {
    resumeOrLoad(mine);
  });
  socket.on(liveEvents.change, (change: ChangeMessage) => {
    heard(mine);
    take(mine, change);
  });
  socket.on(liveEvents.beat, (beat: BeatMessage) => {
    heard(mine);
    setTime(beat.now);
    const { board } = useBoardStore.getState();
    if (board && beat.seq > board.seq && !mine.loading) resumeOrLoad(mine);
  });
  socket.on(liveEvents.snapshotNeeded, () => void load(mine));
  socket.on(liveEvents.reloadNeeded, () => {
    location.reload();
  });
  socket.on('disconnect', (reason) => {
    if (reason === 'io server disconnect') void checkSession(mine);
  });
  socket.on('connect_error', () => void checkSession(mine));
  void load(mine);
}

export function stopBoard(): void {
  if (!line) return;
  clearInterval(line.watch);
  line.socket.disconnect();
  line = null;
  useBoardStore.setState({ board: null });
}

function hold(mine: Line, board: Board): void {
  useBoardStore.setState({ board });
  followShop(board);
  const needsYou = [...board.tables.report.values()].filter(
    (one) => one.state === 'contested' && mine.needs(one),
  ).length;
  if (useShell.getState().needsYou !== needsYou) useShell.setState({ needsYou });
}

/** What the shop says of itself now: its name stands in the header, its words and zone on every screen. */
function followShop(board: Board): void {
  const [shop] = board.tables.shop.values();
  if (!shop) return;
  wearShop({ ...shop, zone: zoneAt(rowsOf(board), shopNow()) });
  if (useShell.getState().shopName !== shop.name) useShell.setState({ shopName: shop.name });
}

function heard(mine: Line): void {
  mine.heardAt = Date.now();
  if (useShell.getState().hearing.kind !== 'live') useShell.setState({ hearing: { kind: 'live' } });
}

function watchHearing(mine: Line): void {
  if (Date.now() - mine.heardAt < staleAfterMs || useShell.getState().hearing.kind === 'stale') return;
  useShell.setState({ hearing: { kind: 'stale', heardAt: shopNow(mine.heardAt) } });
}

function setTime(now: string): void {
  const offsetMs = Date.parse(now) - Date.now();
  const apart = offsetMs - useBoardStore.getState().offsetMs;
  if (apart > 0 || apart < -250) useBoardStore.setState({ offsetMs });
}

/** Shop time now, or at a moment of this device's clock; epoch ms. */
export function shopNow(deviceTime: number = Date.now()): number {
  return deviceTime + useBoardStore.getState().offsetMs;
}

function resumeOrLoad(mine: Line): void {
  const { board } = useBoardStore.getState();
  if (board) mine.socket.emit(liveEvents.resume, { epoch: board.epoch, after: board.seq, contract: contractVersion });
  else void load(mine);
}

async function load(mine: Line): Promise<void> {
  if (mine.loading) return;
  mine.loading = true;
  try {
    const answer = await call<BoardAnswer>('GET', '/api/board');
    if (line !== mine) return;
    setTime(answer.now);
    hold(mine, prune(fromSnapshot(answer, mine.audience), shopNow()));
    touchReads(['*']);
    heard(mine);
    mine.loading = false;
    const { waiting } = mine;
    mine.waiting = [];
    for (const change of waiting) take(mine, change);
    if (mine.socket.connected) resumeOrLoad(mine);
  } catch (failure) {
    mine.loading = false;
    if (failure instanceof ProblemAnswer && failure.problem.status === 401) mine.onSignedOut();
    else if (line === mine) setTimeout(() => void load(mine), 1_000);
  }
}

function take(mine: Line, change: ChangeMessage): void {
  if (mine.loading) {
    mine.waiting.push(change);
    return;
  }
  const { board } = useBoardStore.getState();
  if (!board) return;
  const next = apply(board, change);
  if (next === 'missing') {
    resumeOrLoad(mine);
    return;
  }
  if (next === board) return;
  // The shop's time is never before what is on its board, whatever the way here took.
  if (shopNow() < Date.parse(change.at)) setTime(change.at);
  hold(mine, prune(next, shopNow()));
  touchReads(change.touched);
}

/** The server closed the line or refused it: the session may have ended elsewhere. */
async function checkSession(mine: Line): Promise<void> {
  try {
    await call('GET', '/api/session');
    if (line === mine && !mine.socket.active) mine.socket.connect();
  } catch (failure) {
    if (line === mine && failure instanceof ProblemAnswer && failure.problem.status === 401) mine.onSignedOut();
  }
}
