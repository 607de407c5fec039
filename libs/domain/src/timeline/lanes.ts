/** The lanes of the shop as rows: which intervals share one, and how edits of a timeline are written into the bag. */
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { NewRow, Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import type { Span, TimelineEdit } from './timeline.js';

export type LaneTable = 'place' | 'spotUse' | 'clock' | 'attendance';
export const laneTables: readonly LaneTable[] = ['place', 'spotUse', 'clock', 'attendance'];

export const placesOfVehicle = (rows: Rows, vehicleId: string): Row<'place'>[] =>
  rows.list('place', (one) => one.vehicleId === vehicleId);

export const usesOfSpot = (rows: Rows, bayId: string, spot: number): Row<'spotUse'>[] =>
  rows.list('spotUse', (one) => one.bayId === bayId && one.spot === spot);

export const usesOfVehicle = (rows: Rows, vehicleId: string): Row<'spotUse'>[] =>
  rows.list('spotUse', (one) => one.vehicleId === vehicleId);

export const clocksOfPerson = (rows: Rows, personId: string): Row<'clock'>[] =>
  rows.list('clock', (one) => one.personId === personId);

export const attendanceOf = (rows: Rows, personId: string): Row<'attendance'>[] =>
  rows.list('attendance', (one) => one.personId === personId);

/** Every lane that a row of the table lies in, itself included: a vehicle stands in one place, a spot has one user. */
export function laneOf(
  rows: Rows,
  table: LaneTable,
  id: string,
): readonly { readonly id: string; readonly fromAt: number; readonly toAt: number | null }[] {
  switch (table) {
    case 'place':
      return placesOfVehicle(rows, rows.get('place', id).vehicleId);
    case 'spotUse': {
      const use = rows.get('spotUse', id);
      return usesOfSpot(rows, use.bayId, use.spot);
    }
    case 'clock':
      return clocksOfPerson(rows, rows.get('clock', id).personId);
    case 'attendance':
      return attendanceOf(rows, rows.get('attendance', id).personId);
  }
}

/** What of a new row the caller says; its interval comes from the edit. */
export type Brought<T extends LaneTable> = Omit<NewRow<T>, 'fromAt' | 'toAt'>;

/** Carries out the edits on rows of one table. `brought` gives the row for an insertion that is like none. */
export function applyEdits<T extends LaneTable>(
  rows: Rows,
  at: Circumstances,
  table: T,
  edits: readonly TimelineEdit[],
  brought?: Brought<T>,
): void {
  const put = (row: Brought<T>, { fromAt, toAt }: Span): void => {
    rows.add(table, { ...row, fromAt, toAt } as unknown as NewRow<T>);
  };
  const change = (id: string, what: { readonly toAt: number } | { readonly void: true }): void => {
    rows.change(table, id, what as unknown as Partial<Omit<Row<T>, 'id' | 'version'>>);
  };
  for (const edit of edits) {
    switch (edit.do) {
      case 'close':
        change(edit.id, { toAt: edit.toAt });
        break;
      case 'void':
        change(edit.id, { void: true });
        break;
      case 'insert': {
        const row = edit.like === null ? brought : copyOf(rows, at, table, edit.like);
        if (!row) throw new Error(`no ${table} was brought for the new interval`);
        put(row, edit.span);
        break;
      }
    }
  }
}

function copyOf<T extends LaneTable>(rows: Rows, at: Circumstances, table: T, id: string): Brought<T> {
  const { version: _version, void: _void, ...rest } = rows.get(table, id) as Row<LaneTable>;
  return { ...rest, ...recordedBy(at), id: at.newId() } as unknown as Brought<T>;
}
