import type { Visit } from '@holdfast/board';
import { foldKey } from '@holdfast/domain';

/** The typed key begins the text, or a word of it. */
const begins = (text: string | null | undefined, key: string): boolean =>
  text != null && text.split(/\s+/).some((word, at, all) => foldKey(at === 0 ? all.join(' ') : word).startsWith(key));

const isWhole = (text: string | null | undefined, key: string): boolean => text != null && foldKey(text) === key;

/** Below nought: not found. A key or a spot that was typed whole comes first; then plate, key, spot, name, number. */
const rankOf = ({ job, vehicle, customer, contact, place }: Visit, key: string): number => {
  const names = [customer?.name, contact?.name];
  if ([vehicle.plate, job.keyTag, place?.yardSpot].some((text) => isWhole(text, key))) return 0;
  if (begins(vehicle.plate, key)) return 1;
  if (begins(job.keyTag, key)) return 2;
  if (begins(place?.yardSpot, key)) return 3;
  if (names.some((name) => begins(name, key))) return 4;
  return begins(String(job.number), key) ? 5 : -1;
};

/** The visits that are known by what was typed, however it is written, the likeliest first. */
export const findHere = (visits: readonly Visit[], typed: string): Visit[] => {
  const key = foldKey(typed);
  if (key === '') return [];
  return visits
    .map((visit) => ({ visit, rank: rankOf(visit, key) }))
    .filter(({ rank }) => rank >= 0)
    .sort((a, b) => a.rank - b.rank || a.visit.job.number - b.visit.job.number)
    .map(({ visit }) => visit);
};
