/**
 * A file that can be played: one JSON object in each line. What a line may say, and what is wrong with one.
 *
 * - first line: `{"play": 1, "day", "offset", "at", "shop", "owner": {"as", "name", "password"}}` sets up the shop;
 * - `{"at", "by", "do", "with"}`: a command at a time of day, by somebody of the file; `"expect"` says what must come of it
 *   (accepted where it is left out), `"made"` names rows that the server made, `"known"` somebody who signs in from now on;
 * - `{"at", "by", "upload", "picture"}`: a picture (PNG, JPEG or WebP in base64) is uploaded; `upload` names its content;
 * - `{"at", "totals"}`: bay time of the day up to then, in milliseconds by bay and class; the last line has one;
 * - `{"note"}`: words for who reads the file.
 *
 * Words that begin with `$` stand for ids; `"version": "$"` for the version that the row has.
 */
import { isCommandName, type commands } from '@holdfast/contract';

export type CommandName = keyof typeof commands;

export interface ShopLine {
  readonly play: 1;
  /** Day of the file, `YYYY-MM-DD`, and how far its wall clock is from UTC, such as `+01:00`. */
  readonly day: string;
  readonly offset: string;
  readonly at: string;
  readonly shop: {
    readonly name: string;
    readonly zone: string;
    readonly currency: string;
    readonly units: string;
    readonly locale: string;
  };
  readonly owner: { readonly as: string; readonly name: string; readonly password: string };
}

export interface Expected {
  readonly refused?: readonly string[];
  readonly flags?: readonly string[];
  readonly contested?: true;
}

export interface CommandLine {
  readonly at: string;
  readonly by: string;
  readonly do: CommandName;
  readonly with: Readonly<Record<string, unknown>>;
  readonly expect?: Expected;
  /** Names for what the answer's `created` holds, by table. */
  readonly made?: Readonly<Record<string, string>>;
  /** Of `addPerson`: the short name under which this person sends commands later. */
  readonly known?: string;
}

export interface UploadLine {
  readonly at: string;
  readonly by: string;
  readonly upload: string;
  readonly picture: string;
}

export interface TotalsLine {
  readonly at: string;
  readonly totals: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

export type PlayLine = { readonly number: number } & (
  | { readonly kind: 'command'; readonly command: CommandLine }
  | { readonly kind: 'upload'; readonly upload: UploadLine }
  | { readonly kind: 'totals'; readonly totals: TotalsLine }
);

export interface PlayScript {
  readonly shop: ShopLine;
  readonly lines: readonly PlayLine[];
}

/** A line that cannot be played; its message is for whoever wrote the file. */
export class FaultyLine extends Error {
  override readonly name = 'FaultyLine';
  constructor(number: number, words: string) {
    super(`Line ${number}: ${words}`);
  }
}

const timeOfDay = /^([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d{3})?)?$/;

/** Reads a whole file; the first fault is thrown as `FaultyLine`. */
export function readScript(text: string): PlayScript {
  const parsed = text
    .split('\n')
    .flatMap((line, at) => (line.trim() === '' ? [] : [{ number: at + 1, content: parse(line, at + 1) }]));
  const played = parsed.filter(({ content }) => !('note' in content));
  const [first, ...rest] = played;
  if (!first || !isShopLine(first.content))
    throw new FaultyLine(
      first?.number ?? 1,
      'the first line must set up the shop ("play": 1, day, offset, at, shop, owner).',
    );
  const lines = rest.map(({ number, content }) => lineOf(number, content));
  inOrder(first.content.at, lines);
  if (lines.at(-1)?.kind !== 'totals')
    throw new FaultyLine(played.at(-1)?.number ?? 1, 'the last line must state the totals of the day.');
  return { shop: first.content, lines };
}

function parse(line: string, number: number): Record<string, unknown> {
  try {
    const content: unknown = JSON.parse(line);
    if (typeof content === 'object' && content !== null && !Array.isArray(content))
      return content as Record<string, unknown>;
  } catch (failure) {
    if (!(failure instanceof SyntaxError)) throw failure;
  }
  throw new FaultyLine(number, 'this is not one JSON object.');
}

function isShopLine(content: object): content is ShopLine {
  const { play, day, offset, shop, owner } = content as Partial<ShopLine>;
  return (
    play === 1 &&
    /^\d{4}-\d\d-\d\d$/.test(day ?? '') &&
    /^[+-]\d\d:\d\d$/.test(offset ?? '') &&
    shop !== undefined &&
    owner !== undefined
  );
}

function lineOf(number: number, content: Record<string, unknown>): PlayLine {
  if (typeof content['at'] !== 'string' || !timeOfDay.test(content['at']))
    throw new FaultyLine(number, '"at" must be a time of day such as 08:05 or 08:05:30.250.');
  if ('totals' in content) return { number, kind: 'totals', totals: content as unknown as TotalsLine };
  if (typeof content['upload'] === 'string')
    return { number, kind: 'upload', upload: content as unknown as UploadLine };
  const name = content['do'];
  if (typeof name !== 'string' || !isCommandName(name))
    throw new FaultyLine(number, `there is no command "${String(name)}".`);
  if (typeof content['by'] !== 'string' || typeof content['with'] !== 'object')
    throw new FaultyLine(number, 'a command needs "by" and "with".');
  return { number, kind: 'command', command: content as unknown as CommandLine };
}

function inOrder(begin: string, lines: readonly PlayLine[]): void {
  let before = begin;
  for (const line of lines) {
    const at = timeOf(line);
    if (padded(at) < padded(before))
      throw new FaultyLine(line.number, `${at} is before ${before}; lines stand in the order of their times.`);
    before = at;
  }
}

/** The time of day at which the line is played. */
export function timeOf(line: PlayLine): string {
  switch (line.kind) {
    case 'command':
      return line.command.at;
    case 'upload':
      return line.upload.at;
    case 'totals':
      return line.totals.at;
  }
}

function padded(time: string): string {
  return `${time}:00.000`.slice(0, 8) + (time.length > 8 ? time.slice(8) : '.000');
}
