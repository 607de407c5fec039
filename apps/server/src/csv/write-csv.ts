export type CsvCell = string | number | boolean | null | undefined;

/** What the file begins with, so that spreadsheets read it as UTF-8. */
export const csvStart = '\ufeff';
export const csvMediaType = 'text/csv; charset=utf-8; header=present';

/** Signs at which a spreadsheet takes a cell for a formula (OWASP, CSV Injection). */
const formula = /^[=+\-@\t\r\n]/;
const plainNumber = /^-?\d+(\.\d+)?$/;

/**
 * One line as RFC 4180 has it, with CR LF. A text that a spreadsheet would take for a formula gets an apostrophe in front;
 * an amount with a minus is none. Reading such a file in again takes the apostrophe away.
 */
export function csvLine(cells: readonly CsvCell[]): string {
  return `${cells.map(cellText).join(',')}\r\n`;
}

function cellText(cell: CsvCell): string {
  if (cell === null || cell === undefined) return '';
  if (typeof cell !== 'string') return String(cell);
  const safe = formula.test(cell) && !plainNumber.test(cell) ? `'${cell}` : cell;
  return /[",\r\n;\t]/.test(safe) || safe !== cell ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The text of a cell that `csvLine` wrote, for files that went out of here and come back. */
export function withoutGuard(cell: string): string {
  return cell.startsWith("'") && formula.test(cell.slice(1)) ? cell.slice(1) : cell;
}
