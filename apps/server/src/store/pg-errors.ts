/**
 * PostgreSQL's word on a write, in the one place that reads it. The rules stand in the domain; a constraint that fires
 * is the last guard, and mostly means a gap there, but for races between processes it is the normal answer.
 */
import { type Refusal, type RefusalCode } from '@holdfast/domain';
import pg from 'pg';
import { TryAgain } from '../engine/ports.js';

/** Try the whole transaction again: serialization failure, deadlock. */
const again = new Set(['40001', '40P01']);
/** Not now: lock or statement time-out, shutdown, out of connections, disk or memory. */
const busy = new Set([
  '55P03',
  '57014',
  '25P03',
  '25P04',
  '57P01',
  '57P02',
  '57P03',
  '53100',
  '53200',
  '53300',
  '08000',
  '08003',
  '08006',
]);

/** Somebody else was first: decided once more on rows that show it, the rule answers with its own sentence. */
const racedConstraints = new Set([
  'spot_use_once',
  'place_once',
  'clock_once',
  'attendance_once',
  'job_open_once',
  'job_shop_id_number_key',
]);

const byConstraint: Readonly<Record<string, RefusalCode>> = {
  photo_content_fkey: 'photo.notUploaded',
};

export type WriteFailure = TryAgain | 'busy' | Refusal | null;

/** What to make of a failed transaction; null: a bug or an outage, to be thrown on. */
export function writeFailure(failure: unknown): WriteFailure {
  if (!(failure instanceof pg.DatabaseError)) {
    const code = (failure as { code?: unknown } | null)?.code;
    return code === 'ECONNREFUSED' || code === 'ECONNRESET' ? 'busy' : null;
  }
  if (failure.code && again.has(failure.code)) return new TryAgain(failure);
  if (failure.constraint && racedConstraints.has(failure.constraint)) return new TryAgain(failure);
  if (failure.code && busy.has(failure.code)) return 'busy';
  const known = failure.constraint ? byConstraint[failure.constraint] : undefined;
  if (known) return { code: known, facts: {} };
  if (failure.code === '23503') return { code: 'row.notFound', facts: { table: failure.table ?? '', id: '' } };
  return null;
}
