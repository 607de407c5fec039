/**
 * csv/ hides how files of comma-separated values are read and written. Guaranteed: every record of a file comes back, the
 * broken ones marked as such; and what is written opens in a spreadsheet as text and never as a formula.
 *
 * The reader is RFC 4180 taken strictly: a quote stands at the beginning of a cell or nowhere, within quotes it is doubled,
 * behind the closing one comes a separator or the end of the line. What breaks that marks its record and does not stop
 * the file. Lines end in CR LF, LF or CR.
 */
import { cutText } from './cut-text.js';

export type Separator = ',' | ';' | '\t';
export const separators: readonly Separator[] = [',', ';', '\t'];

/** How a record breaks the format. */
export type Broken = 'strayQuote' | 'afterQuote' | 'openQuote' | 'cellTooLong' | 'tooManyCells';

export interface CsvRecord {
  readonly cells: readonly string[];
  readonly broken: Broken | null;
}

/** A cell longer than this is cut there: an open quote would otherwise swallow the rest of a file into one. */
const longestCell = 4_000;
const mostCells = 200;

/** Records in order, blank lines left out. `text` without its byte order mark. */
export function* csvRecords(text: string, separator: Separator): Generator<CsvRecord> {
  const reader = new Reader(text, separator);
  while (!reader.ended) {
    const record = reader.next();
    if (record.cells.length > 1 || record.cells[0] !== '' || record.broken !== null) yield record;
  }
}

class Reader {
  private at = 0;
  private broken: Broken | null = null;
  /** Where a cell without quotes ends, if not at a stray quote. */
  private readonly plainEnd: RegExp;

  constructor(
    private readonly text: string,
    private readonly separator: Separator,
  ) {
    this.plainEnd = new RegExp(`[${separator === '\t' ? '\\t' : separator}\\r\\n]`, 'g');
  }

  get ended(): boolean {
    return this.at >= this.text.length;
  }

  next(): CsvRecord {
    this.broken = null;
    const cells: string[] = [];
    for (;;) {
      const cell = this.text[this.at] === '"' ? this.quoted() : this.plain();
      if (cells.length < mostCells) cells.push(cell);
      else this.broken ??= 'tooManyCells';
      if (this.text[this.at] !== this.separator) break;
      this.at += 1;
    }
    this.endLine();
    return { cells, broken: this.broken };
  }

  private endLine(): void {
    if (this.text[this.at] === '\r') this.at += 1;
    if (this.text[this.at] === '\n') this.at += 1;
  }

  private plain(): string {
    this.plainEnd.lastIndex = this.at;
    const end = this.plainEnd.exec(this.text)?.index ?? this.text.length;
    const cell = this.text.slice(this.at, end);
    this.at = end;
    if (cell.includes('"')) this.broken ??= 'strayQuote';
    return this.cut(cell);
  }

  private quoted(): string {
    const from = this.at + 1;
    let end = from;
    for (;;) {
      end = this.text.indexOf('"', end);
      if (end === -1) {
        this.broken ??= 'openQuote';
        this.at = this.text.length;
        return cutText(this.text.slice(from), longestCell);
      }
      if (this.text[end + 1] !== '"') break;
      end += 2;
    }
    const cell = this.text.slice(from, end).replaceAll('""', '"');
    this.at = end + 1;
    const behind = this.text[this.at];
    if (behind === undefined || behind === this.separator || behind === '\r' || behind === '\n') return this.cut(cell);
    const rest = this.plain();
    this.broken = 'afterQuote';
    return this.cut(cell + rest);
  }

  private cut(cell: string): string {
    if (cell.length <= longestCell) return cell;
    this.broken ??= 'cellTooLong';
    return cutText(cell, longestCell);
  }
}

/** The one that stands most often outside quotes in the first line; a comma where none does. */
export function separatorOf(text: string): Separator {
  const counts = new Map<string, number>();
  let inside = false;
  for (const sign of text.slice(0, 64 * 1024)) {
    if (sign === '"') inside = !inside;
    else if (!inside && (sign === '\n' || sign === '\r') && counts.size > 0) break;
    else if (!inside && (separators as readonly string[]).includes(sign)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
    else if (!inside && (sign === '\n' || sign === '\r')) break;
  }
  const most = Math.max(0, ...counts.values());
  return separators.find((one) => most > 0 && counts.get(one) === most) ?? ',';
}
