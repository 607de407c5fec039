import { pathOf } from '../screen-paths.js';

const checkInName = 'check-in';
const bookName = 'book';

/** Check-in; of a booked visit where one is named. */
export const checkInPath = (jobId?: string): string =>
  `${pathOf.desk}?${checkInName}${jobId === undefined ? '' : `=${encodeURIComponent(jobId)}`}`;

/** Booking; for a day of the shop's zone where one is named. */
export const bookPath = (day?: string): string =>
  `${pathOf.desk}?${bookName}${day === undefined ? '' : `=${encodeURIComponent(day)}`}`;

export type DeskView =
  | { readonly kind: 'desk' }
  /** `jobId`: the booked visit that begins. */
  | { readonly kind: 'checkIn'; readonly jobId: string | null }
  | { readonly kind: 'book'; readonly day: string | null };

const orNull = (value: string | null): string | null => (value === null || value === '' ? null : value);

/** What the search of the desk's address asks for. */
export const deskViewOf = (search: string): DeskView => {
  const params = new URLSearchParams(search);
  if (params.has(checkInName)) return { kind: 'checkIn', jobId: orNull(params.get(checkInName)) };
  if (params.has(bookName)) {
    const day = orNull(params.get(bookName));
    return { kind: 'book', day: day !== null && /^\d{4}-\d{2}-\d{2}$/.test(day) ? day : null };
  }
  return { kind: 'desk' };
};
