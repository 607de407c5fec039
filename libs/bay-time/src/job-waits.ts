/**
 * When a job waits, and for what: held, stored, or neither, at every instant, whether or not it is in a bay.
 *
 * One sweep over what happened to the job. At each instant only counts are kept (lines that could be worked, lines
 * with the customer, lines that each hold binds), so an event costs what it touches: the holds on one line, the lines
 * of one hold, the lines after one line, and the holds open at once.
 */
import type { Interval } from '@holdfast/shop-calendar';
import { type GoAheadAnswer, type JobHold, type JobLine, type StoredMark, allEndedBy } from './account-input.js';

/** A stretch in which the job waits; outside all of them some line could be worked, or nothing is left to do. */
export interface Wait extends Interval {
  readonly state: 'stored' | 'held';
  /** why it is held; `collection` or null where it is stored */
  readonly reason: string | null;
  /** the hold whose reason this is: of those that bind, the one opened first */
  readonly holdId: string | null;
}

/** The same, cut wherever another set of holds binds. */
export interface BoundWait extends Wait {
  /** every hold that binds, in the order they were opened; none where only the customer's word is missing, or stored */
  readonly holds: readonly JobHold[];
}

export interface JobRows {
  readonly lines: readonly JobLine[];
  readonly holds: readonly JobHold[];
  readonly stored: readonly StoredMark[];
}

type EndedHold = JobHold & Interval;

interface HoldState {
  readonly hold: EndedHold;
  /** open lines with the go-ahead among those it names */
  bound: number;
}

/** Lines of one choice, and how many of them have the go-ahead. */
interface Choice {
  given: number;
  readonly lines: LineState[];
}

interface LineState {
  readonly line: JobLine;
  present: boolean;
  ended: boolean;
  answer: GoAheadAnswer;
  openHolds: number;
  readonly holds: HoldState[];
  before: LineState | null;
  readonly following: LineState[];
  choice: Choice | null;
  gives: boolean;
  counted: { readonly workable: boolean; readonly asked: boolean; readonly bindable: boolean };
}

/** words of the domain that the table of the account names itself */
const collection = 'collection';
const goAhead = 'goAhead';
const noHolds: readonly JobHold[] = [];
const nothing = { workable: false, asked: false, bindable: false };

class JobSweep {
  private workable = 0;
  private asked = 0;
  private storedMarks = 0;
  private collections = 0;
  private wholeJobHolds = 0;
  /** in the order they were opened */
  private readonly openHolds: HoldState[] = [];

  /** Brings the counts in step with one line after something about it has changed. */
  recount(state: LineState): void {
    const open = state.present && !state.ended;
    const bindable = open && state.answer === 'given';
    const gated = state.before !== null && !state.before.ended;
    const is = {
      bindable,
      workable: bindable && state.openHolds === 0 && !gated,
      asked: open && state.answer === 'withCustomer' && (state.choice?.given ?? 0) === 0,
    };
    const was = state.counted;
    this.workable += Number(is.workable) - Number(was.workable);
    this.asked += Number(is.asked) - Number(was.asked);
    const change = Number(is.bindable) - Number(was.bindable);
    if (change !== 0) for (const hold of state.holds) hold.bound += change;
    state.counted = is;
    this.recountChoice(state);
  }

  /** Of several ways one was given, or no longer is: the others are asked about no longer, or again. */
  private recountChoice(state: LineState): void {
    const gives = state.present && state.answer === 'given';
    if (state.choice === null || gives === state.gives) return;
    state.gives = gives;
    state.choice.given += gives ? 1 : -1;
    for (const other of state.choice.lines) if (other !== state) this.recount(other);
  }

  turnHold(state: HoldState, lines: readonly LineState[], open: boolean): void {
    const change = open ? 1 : -1;
    if (open) this.openHolds.push(state);
    else this.openHolds.splice(this.openHolds.indexOf(state), 1);
    if (state.hold.lineIds.length === 0) {
      this.wholeJobHolds += change;
      if (state.hold.reason === collection) this.collections += change;
    }
    for (const line of lines) {
      line.openHolds += change;
      this.recount(line);
    }
  }

  turnStored(on: boolean): void {
    this.storedMarks += on ? 1 : -1;
  }

  /** The wait that holds from here on, as the table of the account has it; null: the job does not wait. */
  state(): Omit<BoundWait, 'from' | 'to'> | null {
    if (this.collections > 0) return { state: 'stored', reason: collection, holdId: null, holds: noHolds };
    if (this.storedMarks > 0) return { state: 'stored', reason: null, holdId: null, holds: noHolds };
    if (this.workable > 0 && this.wholeJobHolds === 0) return null;
    const holds: JobHold[] = [];
    for (const { hold, bound } of this.openHolds) if (hold.lineIds.length === 0 || bound > 0) holds.push(hold);
    const [first] = holds;
    if (first !== undefined) return { state: 'held', reason: first.reason, holdId: first.holdId, holds };
    return this.asked > 0 ? { state: 'held', reason: goAhead, holdId: null, holds: noHolds } : null;
  }
}

/** An "after" that names a line not among these gates nothing. Lines come in any order, so links are a second step. */
function lineStatesOf(lines: readonly JobLine[]): ReadonlyMap<string, LineState> {
  const states = new Map<string, LineState>();
  for (const line of lines) {
    states.set(line.lineId, {
      line,
      present: false,
      ended: false,
      answer: 'withCustomer',
      openHolds: 0,
      holds: [],
      before: null,
      following: [],
      choice: null,
      gives: false,
      counted: nothing,
    });
  }
  const choices = new Map<string, Choice>();
  for (const state of states.values()) {
    const { choice } = state.line;
    if (choice != null) {
      state.choice = choices.get(choice) ?? { given: 0, lines: [] };
      state.choice.lines.push(state);
      choices.set(choice, state.choice);
    }
    const before = state.line.after === null ? undefined : states.get(state.line.after);
    if (before === undefined) continue;
    state.before = before;
    before.following.push(state);
  }
  return states;
}

interface Happening {
  readonly at: number;
  readonly apply: () => void;
}

function happeningsOfLine(sweep: JobSweep, state: LineState): Happening[] {
  const { line } = state;
  const set = (at: number, change: () => void): Happening => ({
    at,
    apply: () => {
      change();
      sweep.recount(state);
    },
  });
  const list = [set(line.addedAt, () => (state.present = true))];
  for (const { at, answer } of line.goAhead) list.push(set(at, () => (state.answer = answer)));
  if (line.endedAt !== null) {
    list.push({
      at: line.endedAt,
      apply: () => {
        state.ended = true;
        sweep.recount(state);
        for (const next of state.following) sweep.recount(next);
      },
    });
  }
  return list;
}

function happeningsOfHold(sweep: JobSweep, hold: EndedHold, states: ReadonlyMap<string, LineState>): Happening[] {
  const state: HoldState = { hold, bound: 0 };
  const lines: LineState[] = [];
  for (const lineId of new Set(hold.lineIds)) {
    const line = states.get(lineId);
    if (line === undefined) continue;
    lines.push(line);
    line.holds.push(state);
  }
  return [
    { at: hold.from, apply: () => sweep.turnHold(state, lines, true) },
    { at: hold.to, apply: () => sweep.turnHold(state, lines, false) },
  ];
}

/** Opened earlier first; of two opened together the smaller id, which was made first. */
function byOpening(a: EndedHold, b: EndedHold): number {
  return a.from - b.from || (a.holdId < b.holdId ? -1 : 1);
}

function sameWait(a: Omit<Wait, 'from' | 'to'>, b: Omit<Wait, 'from' | 'to'>): boolean {
  return a.state === b.state && a.reason === b.reason && a.holdId === b.holdId;
}

function sameHolds(a: readonly JobHold[], b: readonly JobHold[]): boolean {
  return a.length === b.length && a.every((hold, at) => hold === b[at]);
}

function happeningsOf(rows: JobRows, now: number, sweep: JobSweep): Happening[] {
  const states = lineStatesOf(rows.lines);
  const happenings: Happening[] = [];
  for (const hold of allEndedBy(rows.holds, now).sort(byOpening)) {
    happenings.push(...happeningsOfHold(sweep, hold, states));
  }
  for (const state of states.values()) happenings.push(...happeningsOfLine(sweep, state));
  for (const { from, to } of allEndedBy(rows.stored, now)) {
    happenings.push(
      { at: from, apply: () => sweep.turnStored(true) },
      { at: to, apply: () => sweep.turnStored(false) },
    );
  }
  return happenings.sort((a, b) => a.at - b.at);
}

/** The waits of one job with all that binds in each of them; see `waitsOfJob`. */
export function boundWaitsOfJob(rows: JobRows, now: number): readonly BoundWait[] {
  const sweep = new JobSweep();
  const happenings = happeningsOf(rows, now, sweep);
  const waits: BoundWait[] = [];
  for (let i = 0; i < happenings.length; i += 1) {
    const { at, apply } = happenings[i] ?? { at: now, apply: () => undefined };
    if (at >= now) break;
    apply();
    const until = Math.min(happenings[i + 1]?.at ?? now, now);
    if (until <= at) continue;
    const state = sweep.state();
    if (state === null) continue;
    const last = waits.at(-1);
    if (last?.to === at && sameWait(last, state) && sameHolds(last.holds, state.holds)) {
      waits[waits.length - 1] = { ...last, to: until };
    } else waits.push({ from: at, to: until, ...state });
  }
  return waits;
}

/**
 * The waits of one job up to `now` (epoch milliseconds), sorted and without overlap; what has no end yet ends at `now`.
 * A line could be worked if it has the go-ahead, is not ended, not held, and the line it comes after is ended. While
 * none could: the job is held if the whole of it, or an open line with the go-ahead, is; else, if a line is with the
 * customer, that is the reason (`goAhead`).
 */
export function waitsOfJob(rows: JobRows, now: number): readonly Wait[] {
  const waits: Wait[] = [];
  for (const { from, to, state, reason, holdId } of boundWaitsOfJob(rows, now)) {
    const last = waits.at(-1);
    if (last?.to === from && sameWait(last, { state, reason, holdId })) waits[waits.length - 1] = { ...last, to };
    else waits.push({ from, to, state, reason, holdId });
  }
  return waits;
}
