/**
 * play/ hides how a day written down in a file is worked through the public API: a shop of its own is set up, its clock is
 * set before each command and stands still in between, everybody has a session of their own. It guarantees that a play
 * counts as passed only if every line came out as the file says, the log has no gap, and the totals are exact.
 */
import { commands, instantFields } from '@holdfast/contract';
import { setTimeout as pause } from 'node:timers/promises';
import {
  type CommandLine,
  type PlayLine,
  type PlayScript,
  readScript,
  type ShopLine,
  timeOf,
  type TotalsLine,
  type UploadLine,
} from './script.js';
import { Names } from './names.js';
import { type CommandAnswer, ServerFault, ShopClient } from './shop-client.js';
import { outcomeDiffers, totalsDiffer } from './compare.js';

export interface PlayOptions {
  readonly url: string;
  /** Shop seconds for each real second; 0: as fast as it goes. */
  readonly speed: number;
  /** Set-up code; without one the server's demo tells it. */
  readonly code?: string;
  /** Afterwards the shop's clock runs on, for who wants to look around in it. */
  readonly keep?: boolean;
  /** Told each line as it comes out. */
  readonly tell?: (text: string) => void;
}

export interface PlayReport {
  /** The name under which the shop was set up. */
  readonly shop: string;
  readonly accepted: number;
  readonly flagged: number;
  readonly refused: number;
  readonly contested: number;
  /** One sentence for each line that did not come out as the file says; empty: all is as stated. */
  readonly differing: readonly string[];
  /** Number of changes in the shop's log. */
  readonly changes: number;
}

interface Playing {
  readonly client: ShopClient;
  readonly names: Names;
  readonly shopName: string;
  readonly shop: ShopLine;
  readonly passwords: Map<string, { readonly name: string; readonly password: string }>;
  readonly tokens: Map<string, string>;
  readonly counts: { accepted: number; flagged: number; refused: number; contested: number };
  readonly differing: string[];
}

const mostNames = 500;

/** Plays the text of a file. Throws `FaultyLine` for one that cannot be read, `ServerFault` where the server fails. */
export async function play(text: string, options: PlayOptions): Promise<PlayReport> {
  const script = readScript(text);
  const playing = await setUp(script, options);
  const tell = options.tell ?? (() => undefined);
  let shown = instantOf(script.shop, script.shop.at);
  for (const line of script.lines) {
    const at = timeOf(line);
    const instant = instantOf(script.shop, at);
    if (options.speed > 0) await pause((instant - shown) / options.speed);
    shown = instant;
    await playing.client.setClock(await token(playing, script.shop.owner.as), new Date(instant).toISOString(), 0);
    const words = await carryOut(playing, line);
    if (words !== null) playing.differing.push(`Line ${line.number} (${at}): ${words}`);
    tell(
      `${at} ${line.kind === 'command' ? `${line.command.by} ${line.command.do}` : line.kind}${words === null ? '' : ` — ${words}`}`,
    );
  }
  const owner = await token(playing, script.shop.owner.as);
  const changes = await checkLog(playing, owner);
  if (options.keep === true) await playing.client.setClock(owner, new Date(shown).toISOString(), 1);
  return { shop: playing.shopName, ...playing.counts, differing: playing.differing, changes };
}

function carryOut(playing: Playing, line: PlayLine): Promise<string | null> {
  switch (line.kind) {
    case 'command':
      return send(playing, line.command);
    case 'upload':
      return upload(playing, line.upload);
    case 'totals':
      return compareTotals(playing, line.totals);
  }
}

async function upload(playing: Playing, { by, upload: name, picture }: UploadLine): Promise<null> {
  const { content } = await playing.client.upload(await token(playing, by), Buffer.from(picture, 'base64'));
  playing.names.tell(name, content);
  return null;
}

function instantOf({ day, offset }: ShopLine, time: string): number {
  return Date.parse(`${day}T${time}${offset}`);
}

async function setUp({ shop }: PlayScript, options: PlayOptions): Promise<Playing> {
  const client = new ShopClient(options.url);
  const code = options.code ?? (await client.demo())?.setUpCode;
  if (code === undefined || code === '')
    throw new ServerFault('This server tells no set-up code. Start it with the demo, or give one with --code.');
  const names = new Names();
  const { name, password } = shop.owner;
  for (let number = 1; number <= mostNames; number += 1) {
    const shopName = number === 1 ? shop.shop.name : `${shop.shop.name} ${number}`;
    const answer = await client.command(null, 'setUpShop', {
      code,
      shop: { ...shop.shop, name: shopName },
      owner: { name, password },
    });
    if (!answer.ok && answer.problem.code === 'setUp.nameTaken') continue;
    if (!answer.ok) throw new ServerFault(`The shop could not be set up: ${answer.problem.detail}`);
    for (const [table, id] of Object.entries(answer.accepted.created)) names.tell(`$${table}`, id);
    const passwords = new Map([[shop.owner.as, { name, password }]]);
    const counts = { accepted: 1, flagged: 0, refused: 0, contested: 0 };
    return { client, names, shopName, shop, passwords, tokens: new Map(), counts, differing: [] };
  }
  throw new ServerFault(`There are ${mostNames} shops of this name already.`);
}

/** The session of somebody of the file, signed in when first needed. */
async function token(playing: Playing, who: string): Promise<string> {
  const known = playing.tokens.get(who);
  if (known !== undefined) return known;
  const person = playing.passwords.get(who);
  if (!person) throw new ServerFault(`The file knows nobody called "${who}".`);
  const session = await playing.client.signIn(playing.shopName, person.name, person.password);
  playing.tokens.set(who, session.token);
  return session.token;
}

async function send(playing: Playing, line: CommandLine): Promise<string | null> {
  const session = await token(playing, line.by);
  const input = playing.names.resolve(line.with) as Record<string, unknown>;
  if (input['version'] === '$') input['version'] = await versionOf(playing, line.do, input, session);
  for (const field of instantFields) {
    const time = input[field];
    if (typeof time === 'string' && /^\d\d:\d\d/.test(time))
      input[field] = new Date(instantOf(playing.shop, time)).toISOString();
  }
  const answer = await playing.client.command(session, line.do, input);
  await remember(playing, line, answer, session);
  return outcomeDiffers(line.expect ?? {}, answer);
}

async function remember(
  { client, counts, names, passwords }: Playing,
  line: CommandLine,
  answer: CommandAnswer,
  session: string,
): Promise<void> {
  if (!answer.ok) {
    counts.refused += 1;
    return;
  }
  const { created, flags, contested } = answer.accepted;
  counts.accepted += 1;
  if (flags.length > 0) counts.flagged += 1;
  if (contested.length > 0) counts.contested += 1;
  for (const [table, name] of Object.entries(line.made ?? {})) names.tell(name, created[table] ?? '');
  if (line.made?.['flag'] !== undefined) names.tell(line.made['flag'], await newestFlag(client, session, flags));
  if (line.made?.['change'] !== undefined) names.tell(line.made['change'], answer.accepted.seq);
  const { name, password } = line.with;
  if (line.known !== undefined && typeof name === 'string' && typeof password === 'string')
    passwords.set(line.known, { name, password });
}

/** A flag is made beside what was asked for, so the answer gives its rule alone; the board has the row. */
async function newestFlag(client: ShopClient, session: string, rules: readonly string[]): Promise<string> {
  const { rows } = await client.board(session);
  const ofRule = (rows['flag'] ?? []).filter((row) => rules.includes(String((row as { rule?: unknown }).rule)));
  return (
    ofRule
      .map(({ id }) => id)
      .sort()
      .at(-1) ?? ''
  );
}

/** The version of the row that the turn acts on, as the board has it now. */
async function versionOf(
  { client }: Playing,
  name: CommandLine['do'],
  input: Record<string, unknown>,
  session: string,
): Promise<number> {
  const { row } = commands[name];
  if (!row) throw new ServerFault(`${name} needs no version.`);
  const { rows } = await client.board(session);
  const found = rows[row.table]?.find(({ id }) => id === input[row.field]);
  return Number(found?.['version'] ?? 1);
}

async function compareTotals(playing: Playing, { totals }: TotalsLine): Promise<string | null> {
  const owner = await token(playing, playing.shop.owner.as);
  return totalsDiffer(totals, await playing.client.bayTime(owner, playing.shop.day));
}

/** Reads the whole log page by page: numbered 1, 2, 3 …, one for each accepted command. */
async function checkLog({ client, counts, differing }: Playing, owner: string): Promise<number> {
  let last = 0;
  for (;;) {
    const page = await client.changes(owner, last);
    for (const { seq } of page.changes) {
      if (seq !== last + 1) differing.push(`The log goes on from ${last} with ${seq}.`);
      last = seq;
    }
    if (!page.more || page.changes.length === 0) break;
  }
  if (last !== counts.accepted)
    differing.push(`The log has ${last} changes, but ${counts.accepted} commands were accepted.`);
  return last;
}
