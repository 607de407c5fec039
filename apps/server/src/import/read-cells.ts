import type { ImportField, ImportMapping } from '@holdfast/contract';
import { foldKey } from '@holdfast/domain';
import { cutText } from '../csv/cut-text.js';
import { withoutGuard } from '../csv/write-csv.js';
import type { RowProblem } from './ports.js';

/** No control signs but line breaks and tabs, as every field of a command. */
const plainText = /^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]*$/u;

/** The cells of one row by field, read one after the other; what does not fit is gathered. */
export class Cells {
  readonly problems: RowProblem[] = [];

  constructor(
    private readonly cells: readonly string[],
    private readonly mapping: ImportMapping,
  ) {}

  problem(field: ImportField | null, code: string, facts: RowProblem['facts'] = {}): void {
    const value = field === null ? null : this.raw(field);
    this.problems.push({ field, code, value: value === null || value === '' ? null : cutText(value, 200), facts });
  }

  private raw(field: ImportField): string {
    const column = this.mapping[field];
    return column === undefined ? '' : withoutGuard(this.cells[column] ?? '').trim();
  }

  /** The text of a field, null where the cell is empty. */
  text(field: ImportField, longest: number): string | null {
    const text = this.raw(field);
    if (text === '') return null;
    if (!plainText.test(text)) this.problem(field, 'signs');
    else if (text.length > longest) this.problem(field, 'tooLong', { longest });
    return text;
  }

  needed(field: ImportField, longest: number): string {
    const text = this.text(field, longest);
    if (text === null) this.problem(field, 'missing');
    return text ?? '';
  }

  whole(field: ImportField, least: number, most: number): number | null {
    const text = this.raw(field);
    if (text === '') return null;
    const digits = text.replace(/[\s.,'’](?=\d{3}\b)/gu, '').replace(/\s*(kg|km|mi|miles)$/i, '');
    const value = /^\d{1,9}$/.test(digits) ? Number(digits) : null;
    if (value === null) this.problem(field, 'notANumber');
    else if (value < least || value > most) this.problem(field, 'outOfRange', { least, most });
    return value;
  }

  /** One of a closed list, by its own name or another word for it; the list's first where the cell is empty. */
  word<W extends string>(field: ImportField, words: Readonly<Record<W, readonly string[]>>): W {
    const list = Object.keys(words) as W[];
    const usual = list[0];
    if (usual === undefined) throw new RangeError('A list of no words.');
    const key = foldKey(this.raw(field));
    if (key === '') return usual;
    const found = list.find((word) => foldKey(word) === key || words[word].some((other) => foldKey(other) === key));
    if (found === undefined)
      this.problem(field, 'unknownWord', { words: list.map((word) => words[word][0] ?? word).join(', ') });
    return found ?? usual;
  }

  /** A day as YYYY-MM-DD. `06/07/2026` has the month first where the shop writes so; `06.07.2026` never has. */
  day(field: ImportField, monthFirst: boolean): string | null {
    const text = this.raw(field);
    if (text === '') return null;
    const day = dayOf(text, monthFirst);
    if (day === null) this.problem(field, 'notADay');
    return day;
  }
}

function dayOf(text: string, monthFirst: boolean): string | null {
  const iso = /^(\d{4})-(\d\d?)-(\d\d?)(?:[T ].*)?$/.exec(text);
  if (iso) return existing(iso[1], iso[2], iso[3]);
  const other = /^(\d\d?)([/.-])(\d\d?)\2(\d{4})$/.exec(text);
  if (!other) return null;
  const [, first, sign, second, year] = other;
  return monthFirst && sign === '/' ? existing(year, first, second) : existing(year, second, first);
}

function existing(year = '', month = '', day = ''): string | null {
  const written = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const at = Date.parse(`${written}T00:00:00Z`);
  if (Number.isNaN(at) || Number(year) < 1970 || Number(year) > 2199) return null;
  return new Date(at).toISOString().startsWith(written) ? written : null;
}
