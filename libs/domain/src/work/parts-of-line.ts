/** What becomes of a line's part lines when it ends without them: no part is lost, each keeps one purpose. */
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

/** Still to be fitted: neither on the vehicle nor cancelled. */
export function isOpenPart(part: Row<'partLine'>): boolean {
  return part.state !== 'fitted' && part.state !== 'cancelled';
}

export function openPartsOf(rows: Rows, lineId: string): Row<'partLine'>[] {
  return rows.list('partLine', (part) => part.lineId === lineId && isOpenPart(part));
}

type Purpose = Pick<Row<'partLine'>, 'jobId' | 'lineId' | 'followUpId'>;

export function movePart(rows: Rows, part: Row<'partLine'>, purpose: Purpose): void {
  rows.change('partLine', part.id, purpose);
}

export function movePartsToFollowUp(rows: Rows, lineId: string, followUpId: string): void {
  for (const part of openPartsOf(rows, lineId)) movePart(rows, part, { jobId: null, lineId: null, followUpId });
}
