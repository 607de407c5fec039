import { isTextKey, type Locale, say, type TextKey } from '@holdfast/contract';
import type { Session } from '../../auth/sessions.js';
import type { CsvCell } from '../../csv/write-csv.js';
import type { HttpReply } from '../http-types.js';
import { sendCsv } from '../send-csv.js';

/** How the cells of a list are written: words of the shop's locale, times by its wall clock. */
export interface CsvWords {
  readonly locale: Locale;
  /** `YYYY-MM-DD HH:MM` in the zone of the shop, which spreadsheets read as a time. */
  readonly at: (iso: string | null | undefined) => string;
  /** The label of a word of a closed list (`word.<area>.<value>`), else the word itself. */
  readonly word: (area: string, value: string | null | undefined) => string;
  /** Name of a person by id. */
  readonly person: (id: string | null | undefined) => string;
}

export interface CsvColumn<T> {
  readonly heading: TextKey;
  readonly cell: (item: T, words: CsvWords) => CsvCell;
}

export type PageAfter<T> = (
  after: string | undefined,
) => Promise<{ readonly items: readonly T[]; readonly next: string | null }>;

export function csvWords({ shop }: Session, people: ReadonlyMap<string, string>): CsvWords {
  const clock = new Intl.DateTimeFormat('sv-SE', { timeZone: shop.zone, dateStyle: 'short', timeStyle: 'short' });
  return {
    locale: shop.locale,
    at: (iso) => (iso === null || iso === undefined ? '' : clock.format(new Date(iso))),
    word(area, value) {
      const key = `${area}.${value ?? ''}`;
      return isTextKey(key) ? say(shop.locale, key) : (value ?? '');
    },
    person: (id) => people.get(id ?? '') ?? '',
  };
}

/** A list as a file, a page at a time: it is read on as fast as it is taken, and never whole in memory. */
export function sendListAsCsv<T>(
  reply: HttpReply,
  name: string,
  columns: readonly CsvColumn<T>[],
  words: CsvWords,
  pageAfter: PageAfter<T>,
): Promise<void> {
  return sendAsCsv(reply, name, columns, words, allOf(pageAfter));
}

async function* allOf<T>(pageAfter: PageAfter<T>): AsyncGenerator<readonly T[]> {
  for (let after: string | null | undefined = undefined; after !== null;) {
    const { items, next }: Awaited<ReturnType<PageAfter<T>>> = await pageAfter(after);
    yield items;
    after = next;
  }
}

/** The same of items that come in chunks. */
export async function sendAsCsv<T>(
  reply: HttpReply,
  name: string,
  columns: readonly CsvColumn<T>[],
  words: CsvWords,
  chunks: AsyncIterable<readonly T[]>,
): Promise<void> {
  async function* lines(): AsyncGenerator<CsvCell[][]> {
    for await (const items of chunks) yield items.map((item) => columns.map(({ cell }) => cell(item, words)));
  }
  const headings = columns.map(({ heading }) => say(words.locale, heading));
  await sendCsv(reply, name, headings, lines());
}

/** Pages of a read that answers JSON text. */
export function pagesOf<T>(read: (after: string | undefined) => Promise<string | null>): PageAfter<T> {
  return async (after) => {
    const text = await read(after);
    return text === null ? { items: [], next: null } : (JSON.parse(text) as Awaited<ReturnType<PageAfter<T>>>);
  };
}
