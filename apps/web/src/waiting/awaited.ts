// waiting/ hides how the holds, part lines, go-aheads, sublets and questions of a board become a list of what is awaited. It guarantees that
// each thing stands there once with all the vehicles it keeps from going on, and that the one which has kept a bay
// standing longest comes first.
import { accountOfSpot, type Board, calendarOfBoard, openVisits, rowsOf, type Visit } from '@holdfast/board';
import { foldKey, type HoldReason, lineEnded, linesOf, missingParts, type Row } from '@holdfast/domain';

/** One visit that a thing keeps from going on. */
export type Blocked = {
  readonly visit: Visit;
  /** The lines it holds; none: the whole job. */
  readonly lines: readonly Row<'workLine'>[];
  /** Null for what nobody opened a hold for: a go-ahead, an arranged sublet, an outsider, a question. */
  readonly hold: Row<'hold'> | null;
  /** Epoch ms. */
  readonly since: number;
  /** The bay that it stands in meanwhile, held. */
  readonly bay: string | null;
  /** Opening time that it has kept a bay held since then, whole minutes. */
  readonly liftMinutes: number;
};

export type Awaited = {
  readonly key: string;
  readonly reason: HoldReason;
  /** Empty but for parts: the part lines of the same part. */
  readonly parts: readonly Row<'partLine'>[];
  /** The work of another firm that is awaited; null for all else. */
  readonly sublet: Row<'sublet'> | null;
  /** The question that waits for its answer, which holds nothing up; null for all else. */
  readonly question: Row<'question'> | null;
  readonly blocked: readonly Blocked[];
  /** The earliest of its waits, epoch ms, and its opening minutes. */
  readonly since: number;
  readonly minutes: number;
  readonly liftMinutes: number;
};

type Found = {
  readonly key: string;
  readonly reason: HoldReason;
  readonly part?: Row<'partLine'>;
  readonly sublet?: Row<'sublet'>;
  readonly question?: Row<'question'>;
  readonly blocked: Blocked;
};

const heldInBay = (board: Board, visit: Visit, since: number, now: number): number => {
  const uses = rowsOf(board).list('spotUse', (use) => use.jobId === visit.job.id && (use.toAt ?? now) > since);
  const milliseconds = uses.reduce((sum, use) => {
    const window = { from: Math.max(since, use.fromAt), to: use.toAt ?? now };
    const { segments } = accountOfSpot(board, use.bayId, use.spot, window, now);
    const held = segments.filter((segment) => segment.jobId === visit.job.id && segment.class === 'held');
    return held.reduce((total, segment) => total + segment.to - segment.from, sum);
  }, 0);
  return Math.floor(milliseconds / 60_000);
};

const blockedBy = (board: Board, visit: Visit, hold: Row<'hold'> | null, since: number, now: number): Blocked => {
  const bay =
    visit.place?.kind === 'bay' && visit.state.kind === 'held'
      ? board.tables.bay.get(visit.place.bayId ?? '')
      : undefined;
  const lines = hold ? linesOf(rowsOf(board), hold) : [];
  return { visit, lines, hold, since, bay: bay?.name ?? null, liftMinutes: heldInBay(board, visit, since, now) };
};

/** The same part for several vehicles is one thing where it has a number; else each part line is its own. */
const partKey = (part: Row<'partLine'>): string =>
  part.number === null ? `part ${part.id}` : `part ${foldKey(part.number)} ${part.supplierId ?? ''}`;

const ownEnd: readonly HoldReason[] = ['setting', 'conditions', 'collection', 'assessor'];

/** A tool or an answer that several wait for in the same words is one thing. */
const holdKey = (hold: Row<'hold'>): string => {
  if (hold.words === null || ownEnd.includes(hold.reason)) return `hold ${hold.id}`;
  return [hold.reason, foldKey(hold.words), hold.moveOfId ?? '', foldKey(hold.moveOf ?? '')].join(' ');
};

/** Sublet and hold begin in one command, at one instant; else a job with one sublet under way means that one. */
const subletOf = (board: Board, hold: Row<'hold'>): Row<'sublet'> | undefined => {
  const underWay = rowsOf(board).list('sublet', (one) => one.jobId === hold.jobId && one.state === 'underWay');
  return underWay.find((one) => one.fromAt === hold.fromAt) ?? (underWay.length === 1 ? underWay[0] : undefined);
};

/** What is awaited without holding anything: it keeps no bay, and stands beside what does. */
const unheld = (visit: Visit, since: number, lineId: string | null): Blocked => ({
  visit,
  lines: visit.lines.filter((line) => line.id === lineId),
  hold: null,
  since,
  bay: null,
  liftMinutes: 0,
});

/** Sublets that are arranged, and outsiders who work here: nobody opened a hold for them. */
const foundSublets = (board: Board, visit: Visit): Found[] => {
  const rows = rowsOf(board);
  const held = visit.openHolds.filter((hold) => hold.reason === 'sublet').map((hold) => subletOf(board, hold)?.id);
  return rows
    .list('sublet', (one) => one.jobId === visit.job.id && (one.state === 'arranged' || one.state === 'underWay'))
    .filter((one) => !held.includes(one.id))
    .map((sublet) => ({
      key: `sublet ${sublet.id}`,
      reason: 'sublet',
      sublet,
      blocked: unheld(visit, sublet.fromAt ?? sublet.effectiveAt, sublet.lineId),
    }));
};

const foundQuestions = (board: Board, visit: Visit): Found[] =>
  rowsOf(board)
    .list('question', (one) => one.jobId === visit.job.id && one.answeredAt === null)
    .map((question) => ({
      key: `question ${question.id}`,
      reason: 'information',
      question,
      blocked: unheld(visit, question.effectiveAt, question.lineId),
    }));

const foundInHold = (board: Board, visit: Visit, hold: Row<'hold'>, now: number): Found[] => {
  if (hold.reason === 'setting' && hold.endsAt !== null && hold.endsAt <= now) return [];
  const blocked = blockedBy(board, visit, hold, hold.fromAt, now);
  const { reason } = hold;
  if (reason === 'goAhead') return [{ key: `goAhead ${visit.job.id}`, reason, blocked: withAsked(visit, blocked) }];
  const sublet = reason === 'sublet' ? subletOf(board, hold) : undefined;
  if (sublet) return [{ key: `sublet ${sublet.id}`, reason, sublet, blocked }];
  if (reason !== 'parts') return [{ key: holdKey(hold), reason, blocked }];
  return missingParts(rowsOf(board), hold).map((part) => ({ key: partKey(part), reason, part, blocked }));
};

const askedLines = (visit: Visit): Row<'workLine'>[] =>
  visit.lines.filter((line) => line.goAhead === 'withCustomer' && !lineEnded(line));

/** A go-ahead hold on the whole job waits for the lines that are with the customer. */
const withAsked = (visit: Visit, blocked: Blocked): Blocked =>
  blocked.lines.length > 0 ? blocked : { ...blocked, lines: askedLines(visit) };

/** Lines with the customer, although nobody opened a hold for them. */
const foundWithCustomer = (board: Board, visit: Visit, now: number): Found[] => {
  const asked = askedLines(visit);
  if (asked.length === 0 || visit.openHolds.some((hold) => hold.reason === 'goAhead')) return [];
  const answers = rowsOf(board).list('goAhead', (one) => one.jobId === visit.job.id && one.answer === 'withCustomer');
  const since = Math.min(
    ...asked.map((line) =>
      Math.max(line.effectiveAt, ...answers.filter((one) => one.lineId === line.id).map((one) => one.effectiveAt)),
    ),
  );
  const blocked = { ...blockedBy(board, visit, null, since, now), lines: asked };
  return [{ key: `goAhead ${visit.job.id}`, reason: 'goAhead', blocked }];
};

const together = (found: readonly Found[], board: Board, now: number): Awaited => {
  const since = Math.min(...found.map(({ blocked }) => blocked.since));
  const jobs = new Map(found.map(({ blocked }) => [blocked.visit.job.id, blocked]));
  const [first] = found;
  return {
    key: first?.key ?? '',
    reason: first?.reason ?? 'other',
    parts: [...new Map(found.flatMap(({ part }) => (part ? [[part.id, part]] : []))).values()],
    sublet: first?.sublet ?? null,
    question: first?.question ?? null,
    blocked: [...jobs.values()],
    since,
    minutes: calendarOfBoard(board).openMinutes(since, now),
    liftMinutes: [...jobs.values()].reduce((sum, one) => sum + one.liftMinutes, 0),
  };
};

/** What the shop waits for at `now` (epoch ms): what has kept bays held longest first, then what has waited longest. */
export const awaitedOn = (board: Board, now: number): Awaited[] => {
  const groups = new Map<string, Found[]>();
  for (const visit of openVisits(board, now)) {
    const found = [
      ...visit.openHolds.flatMap((hold) => foundInHold(board, visit, hold, now)),
      ...foundWithCustomer(board, visit, now),
      ...foundSublets(board, visit),
      ...foundQuestions(board, visit),
    ];
    for (const one of found) groups.set(one.key, [...(groups.get(one.key) ?? []), one]);
  }
  return [...groups.values()]
    .map((found) => together(found, board, now))
    .sort((a, b) => b.liftMinutes - a.liftMinutes || b.minutes - a.minutes || (a.key < b.key ? -1 : 1));
};

/** Opening minutes that bays have stood held for all of it; a vehicle that waits for two things is counted once. */
export const heldBayMinutes = (awaited: readonly Awaited[]): number => {
  const byJob = new Map<string, number>();
  for (const { visit, liftMinutes } of awaited.flatMap((one) => one.blocked)) {
    byJob.set(visit.job.id, Math.max(liftMinutes, byJob.get(visit.job.id) ?? 0));
  }
  return [...byJob.values()].reduce((sum, minutes) => sum + minutes, 0);
};
