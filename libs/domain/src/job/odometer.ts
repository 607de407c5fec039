import { type Circumstances, recordedBy } from '../kernel/decision.js';
import { flag } from '../kernel/flags.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

type Unit = Row<'odometerReading'>['unit'];

/** Metres in a mile: international mile, exact by definition (1959 agreement). */
const metresPer: Readonly<Record<Unit, number>> = { km: 1000, mi: 1609.344 };

const metres = (reading: { readonly value: number; readonly unit: Unit }): number =>
  reading.value * metresPer[reading.unit];

/** The last reading of the vehicle that is not in doubt itself. */
function lastTrusted(rows: Rows, vehicleId: string): { value: number; unit: Unit } | undefined {
  let last: (Row<'odometerReading'> & { readonly value: number }) | undefined;
  for (const row of rows.list('odometerReading', (one) => one.vehicleId === vehicleId && !one.doubtful)) {
    const { value } = row;
    if (value !== null && (!last || row.effectiveAt >= last.effectiveAt)) last = { ...row, value };
  }
  return last;
}

/** The unit a vehicle's readings come in: that of its last one, else the shop's own. */
export function odometerUnitOf(rows: Rows, vehicleId: string): Unit {
  return lastTrusted(rows, vehicleId)?.unit ?? (rows.list('shop')[0]?.units === 'us' ? 'mi' : 'km');
}

/**
 * Keeps a reading, in the unit of the instrument, with where it comes from. Missing or not readable is kept as such; one
 * that is lower than the last trusted one is marked doubtful and flagged. Nothing is refused (rule 15).
 */
export function recordOdometer(
  rows: Rows,
  at: Circumstances,
  of: { readonly vehicleId: string; readonly jobId: string | null },
  said: { readonly value: number | null; readonly unit: Unit; readonly source: Row<'odometerReading'>['source'] },
): void {
  const value = said.source === 'notReadable' ? null : said.value;
  const earlier = lastTrusted(rows, of.vehicleId);
  const falling =
    value !== null && earlier !== undefined && metres({ value, unit: said.unit }) < metres(earlier)
      ? earlier
      : undefined;
  rows.add('odometerReading', {
    id: at.newId(),
    ...recordedBy(at),
    ...of,
    value,
    unit: said.unit,
    source: value === null ? 'notReadable' : said.source,
    doubtful: falling !== undefined,
  });
  if (falling) {
    const facts = { value, unit: said.unit, earlier: falling.value, earlierUnit: falling.unit };
    flag(rows, at, 'odometer.falling', of, facts);
  }
}
