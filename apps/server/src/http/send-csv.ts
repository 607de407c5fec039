import { Readable } from 'node:stream';
import { csvLine, csvMediaType, csvStart, type CsvCell } from '../csv/write-csv.js';
import type { HttpReply } from './http-types.js';

/**
 * Sends lines as they come, so that a long list is never whole in memory. The first ones are waited for before anything is
 * said, so that what fails at once is answered as a problem; what fails later ends the connection before its end.
 */
export async function sendCsv(
  reply: HttpReply,
  name: string,
  headings: readonly string[],
  chunks: AsyncIterable<readonly (readonly CsvCell[])[]>,
): Promise<void> {
  const text = textOf(chunks, csvStart + csvLine(headings), csvLine);
  await sendStream(reply, { name: `${name}.csv`, type: csvMediaType }, text);
}

/** JSON lines: one object on each line, as `line` writes it. */
export function sendJsonLines(reply: HttpReply, name: string, chunks: AsyncIterable<readonly string[]>): Promise<void> {
  const text = textOf(chunks, '', (line: string) => `${line}\n`);
  return sendStream(reply, { name: `${name}.jsonl`, type: 'application/jsonl; charset=utf-8' }, text);
}

async function* textOf<L>(
  chunks: AsyncIterable<readonly L[]>,
  start: string,
  line: (one: L) => string,
): AsyncGenerator<string> {
  let begun = false;
  for await (const lines of chunks) {
    yield (begun ? '' : start) + lines.map(line).join('');
    begun = true;
  }
  if (!begun) yield start;
}

async function sendStream(
  reply: HttpReply,
  file: { readonly name: string; readonly type: string },
  text: AsyncGenerator<string>,
): Promise<void> {
  const first = await text.next();
  async function* whole(): AsyncGenerator<string> {
    if (first.done !== true && first.value !== '') yield first.value;
    for await (const more of text) if (more !== '') yield more;
  }
  await reply
    .code(200)
    .header('content-type', file.type)
    .header('content-disposition', `attachment; filename="${file.name}"`)
    .header('cache-control', 'no-store')
    .send(Readable.from(whole()));
}
