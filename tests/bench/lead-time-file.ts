/**
 * A file of purchase orders with the columns id,vendor,mode,po_sent,scheduled,delivered becomes a history for
 * libs/arrivals. Dates are `YYYY-MM-DD`; `scheduled` may be empty (no day named), `delivered` too (still on its way).
 * A row that cannot be true is rejected with its reason and counted, never mended.
 */
import type { OrderedLine } from '@holdfast/arrivals';
import { isLocalDate } from '@holdfast/shop-calendar';

export type RowReason =
  'columns' | 'noId' | 'idTwice' | 'noVendor' | 'notADate' | 'deliveredBeforeSent' | 'scheduledBeforeSent';

export interface RejectedRow {
  /** line of the file, the header being 1 */
  readonly row: number;
  readonly reason: RowReason;
  readonly text: string;
}

export interface LeadTimes {
  readonly history: readonly OrderedLine[];
  readonly rejected: readonly RejectedRow[];
}

const header = 'id,vendor,mode,po_sent,scheduled,delivered';

/** Days are taken at noon UTC: a day is all that the file knows. */
export const noonOf = (date: string): number => Date.parse(`${date}T12:00:00Z`);

/** The fields of one row; a field in double quotes may hold commas, and two double quotes for one. */
function fieldsOf(row: string): string[] {
  const fields: string[] = [];
  let field = '';
  let quoted = false;
  for (let at = 0; at < row.length; at += 1) {
    const sign = row.charAt(at);
    if (sign === '"') {
      if (quoted && row.charAt(at + 1) === '"') {
        field += '"';
        at += 1;
      } else quoted = !quoted;
    } else if (sign === ',' && !quoted) {
      fields.push(field.trim());
      field = '';
    } else field += sign;
  }
  return [...fields, field.trim()];
}

const isDateOrNone = (text: string): boolean => text === '' || isLocalDate(text);

function reasonAgainst(fields: readonly string[], known: ReadonlySet<string>): RowReason | null {
  if (fields.length !== 6) return 'columns';
  const [id, vendor, , sent, scheduled, delivered] = fields as [string, string, string, string, string, string];
  if (id === '') return 'noId';
  if (known.has(id)) return 'idTwice';
  if (vendor === '') return 'noVendor';
  if (!isLocalDate(sent) || !isDateOrNone(scheduled) || !isDateOrNone(delivered)) return 'notADate';
  if (delivered !== '' && delivered < sent) return 'deliveredBeforeSent';
  if (scheduled !== '' && scheduled < sent) return 'scheduledBeforeSent';
  return null;
}

/** Refuses a file with other columns with a RangeError. */
export function readLeadTimes(text: string): LeadTimes {
  const [first = '', ...rows] = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  if (first.trim() !== header) throw new RangeError(`The columns are "${first}", not "${header}".`);
  const history: OrderedLine[] = [];
  const rejected: RejectedRow[] = [];
  const known = new Set<string>();
  rows.forEach((row, i) => {
    if (row.trim() === '') return;
    const fields = fieldsOf(row);
    const reason = reasonAgainst(fields, known);
    if (reason !== null) {
      rejected.push({ row: i + 2, reason, text: row });
      return;
    }
    const [id = '', vendor = '', mode = '', sent = '', scheduled = '', delivered = ''] = fields;
    known.add(id);
    const orderedAt = noonOf(sent);
    history.push({
      lineId: id,
      orderId: null,
      supplierId: vendor,
      partKind: mode,
      family: null,
      orderedAt,
      words: scheduled === '' ? [] : [{ givenAt: orderedAt, state: null, dueOn: scheduled }],
      goodAt: delivered === '' ? null : noonOf(delivered),
      closedAt: null,
    });
  });
  return { history, rejected };
}
