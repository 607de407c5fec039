/**
 * The rows of a window of bay time. They are many (a year of ten bays is some thirty thousand), so each table comes as a
 * few JSON arrays, one for each column: a tenth of the work for PostgreSQL and the parser that an object for each row
 * would be. Jobs are named by their numbers, which are short.
 */
import { type GoAheadAnswer, type HeldPart, outsiderId } from '@holdfast/bay-time';
import type pg from 'pg';
import { epochMs } from './wire-sql.js';

/** Instants are epoch ms; `to` null: still going on. */
interface StayRow {
  readonly bayId: string;
  readonly spot: number;
  readonly kept: boolean;
  readonly from: number;
  readonly to: number | null;
}
interface ClockRow {
  readonly personId: string;
  readonly bench: boolean;
  readonly from: number;
  readonly to: number | null;
}
interface HoldRow {
  readonly holdId: string;
  readonly reason: string;
  readonly from: number;
  readonly to: number | null;
  /** Empty: the whole job. */
  readonly lineIds: string[];
  /** What a parts hold waits for, where that was read as well. */
  readonly parts?: readonly HeldPart[];
}
interface LineRow {
  readonly lineId: string;
  readonly addedAt: number;
  readonly endedAt: number | null;
  readonly after: string | null;
  readonly choice: string | null;
  /** The answer it has now, for a line that nobody was asked about. */
  readonly answer: GoAheadAnswer;
  readonly history: { readonly at: number; readonly answer: GoAheadAnswer }[];
}

/** Everything that happened to one job whose vehicle had a spot inside the window. */
export interface JobInWindow {
  readonly id: string;
  readonly stays: StayRow[];
  readonly clocks: ClockRow[];
  readonly holds: HoldRow[];
  readonly lines: LineRow[];
  /** From arrival to hand-back of an internal job that is kept here; null for every other. */
  readonly stored: { readonly from: number; readonly to: number | null } | null;
}

/** The columns of a table as one JSON array of arrays, or null where it has no row. `k` is its row, `h` that of its job. */
const columnsOf = (table: string, columns: readonly string[], where = '') => `(SELECT json_build_array(${columns
  .map((column) => `json_agg(${column})`)
  .join(', ')})
  FROM "${table}" k JOIN here h ON h."id" = k."job_id" WHERE k."shop_id" = $1 AND NOT k."void" ${where})`;

const from = epochMs('k."from_at"');
const to = epochMs('k."to_at"');
const inWindow = (s: string) => `${s}."from_at" < to_timestamp($3::double precision / 1000)
  AND (${s}."to_at" IS NULL OR ${s}."to_at" > to_timestamp($2::double precision / 1000))`;

const textOf = (jobs: string) => `WITH here AS MATERIALIZED (
  SELECT j."id", j."number", coalesce(j."arrived_at", j."checked_in_at") AS came_at, j."ended_at", j."stored_here" AND j."kind" = 'internal' AS stored FROM "job" j
  WHERE j."shop_id" = $1 AND (${jobs})
)
SELECT json_build_array(
(SELECT json_build_array(json_agg("number"), json_agg("id"), json_agg(stored), json_agg(${epochMs('"came_at"')}), json_agg(${epochMs('"ended_at"')})) FROM here),
${columnsOf('spot_use', ['h."number"', 'k."bay_id"', 'k."spot"', `k."kind" = 'kept'`, from, to], `AND ${inWindow('k')}`)},
${columnsOf('clock', ['h."number"', 'k."person_id"', 'k."bench"', from, to])},
${columnsOf('hold', ['h."number"', 'k."id"', 'k."reason"', from, to])},
${columnsOf('hold_line', ['k."hold_id"', 'k."line_id"'])},
${columnsOf('work_line', ['h."number"', 'k."id"', epochMs('k."effective_at"'), epochMs('k."ended_at"'), 'k."after_line_id"', 'k."choice_id"', 'k."go_ahead"'])},
${columnsOf('go_ahead', ['k."line_id"', epochMs('k."effective_at"'), 'k."answer"'])},
${columnsOf('sublet', ['h."number"', 'k."id"', from, to], `AND k."form" = 'outsiderIn' AND k."from_at" IS NOT NULL`)}
)::text AS columns`;

/**
 * Two names, because PostgreSQL keeps one plan for each: a day's rows are found job by job, a year's by reading the
 * shop's tables through.
 */
const inABay = `j."id" IN (SELECT s."job_id" FROM "spot_use" s WHERE s."shop_id" = $1 AND NOT s."void" AND ${inWindow('s')})`;
const text = textOf(inABay);
const statements = { short: { name: 'bay-time-short', text }, long: { name: 'bay-time-long', text } };
/** For the flow of vehicles: those that never had a bay as well. */
const onPremises = {
  name: 'bay-time-on-premises',
  text: textOf(`NOT j."void" AND coalesce(j."arrived_at", j."checked_in_at") < to_timestamp($3::double precision / 1000)
    AND (j."ended_at" IS NULL OR j."ended_at" > to_timestamp($2::double precision / 1000)) OR ${inABay}`),
};
const shortMs = 8 * 86_400_000;

type Column = readonly unknown[];
type Table = readonly Column[];

/** The rows of a table; none where it came without columns. */
function rowsOf(table: Table | undefined): (readonly unknown[])[] {
  const [first, ...others] = table ?? [];
  return first?.map((value, row) => [value, ...others.map((column) => column[row])]) ?? [];
}

type HereValues = readonly [job: number, id: string, isStored: boolean, cameAt: number, endedAt: number | null];
type StayValues = readonly [job: number, bay: string, spot: number, kept: boolean, from: number, to: number | null];
type ClockValues = readonly [job: number, person: string, bench: boolean, from: number, to: number | null];
type HoldValues = readonly [job: number, id: string, reason: string, from: number, to: number | null];
type HeldLineValues = readonly [hold: string, line: string];
type LineValues = readonly [
  job: number,
  id: string,
  addedAt: number,
  endedAt: number | null,
  after: string | null,
  choice: string | null,
  answer: GoAheadAnswer,
];
type OutsiderValues = readonly [job: number, sublet: string, from: number, to: number | null];
type AnswerValues = readonly [line: string, at: number, answer: GoAheadAnswer];

/** Jobs that had a spot at some instant of [from, to), epoch ms, with all their clocks, holds, lines and answers. */
export async function jobsInWindow(
  client: pg.ClientBase,
  shopId: string,
  window: { readonly from: number; readonly to: number },
  options: { readonly onPremises?: boolean } = {},
): Promise<readonly JobInWindow[]> {
  const inBays = window.to - window.from <= shortMs ? statements.short : statements.long;
  const statement = options.onPremises === true ? onPremises : inBays;
  const { rows } = await client.query<{ columns: string }>({ ...statement, values: [shopId, window.from, window.to] });
  return jobsOf(JSON.parse(rows[0]?.columns ?? '[]') as readonly Table[]);
}

function jobsOf(columns: readonly Table[]): readonly JobInWindow[] {
  const [here, stays, clocks, holds, heldLines, lines, answers, outsiders] = columns;
  const jobs = new Map<number, JobInWindow>();
  for (const [job, id, isStored, from, to] of rowsOf(here) as HereValues[]) {
    jobs.set(job, { id, stays: [], clocks: [], holds: [], lines: [], stored: isStored ? { from, to } : null });
  }
  for (const [job, bayId, spot, kept, from, to] of rowsOf(stays) as StayValues[]) {
    jobs.get(job)?.stays.push({ bayId, spot, kept, from, to });
  }
  for (const [job, clock] of clocksOf(clocks, outsiders)) jobs.get(job)?.clocks.push(clock);
  const holdsById = new Map<string, HoldRow>();
  for (const [job, holdId, reason, from, to] of rowsOf(holds) as HoldValues[]) {
    const hold: HoldRow = { holdId, reason, from, to, lineIds: [] };
    jobs.get(job)?.holds.push(hold);
    holdsById.set(holdId, hold);
  }
  for (const [holdId, lineId] of rowsOf(heldLines) as HeldLineValues[]) holdsById.get(holdId)?.lineIds.push(lineId);
  const linesById = new Map<string, LineRow>();
  for (const [job, lineId, addedAt, endedAt, after, choice, answer] of rowsOf(lines) as LineValues[]) {
    const line: LineRow = { lineId, addedAt, endedAt, after, choice, answer, history: [] };
    jobs.get(job)?.lines.push(line);
    linesById.set(lineId, line);
  }
  for (const [lineId, at, answer] of rowsOf(answers) as AnswerValues[])
    linesById.get(lineId)?.history.push({ at, answer });
  return [...jobs.values()];
}

/** The clocks of people; work by somebody of another firm in the bay is work too, by nobody of the shop. */
function clocksOf(clocks: Table | undefined, outsiders: Table | undefined): readonly (readonly [number, ClockRow])[] {
  const ours = (rowsOf(clocks) as ClockValues[]).map(
    ([job, personId, bench, from, to]) => [job, { personId, bench, from, to }] as const,
  );
  const theirs = (rowsOf(outsiders) as OutsiderValues[]).map(
    ([job, subletId, from, to]) => [job, { personId: outsiderId(subletId), bench: false, from, to }] as const,
  );
  return [...ours, ...theirs];
}
