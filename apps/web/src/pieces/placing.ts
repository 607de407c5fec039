import { wouldRefuse, type Board, type Spot, type Visit } from '@holdfast/board';
import type { By, Refusal, TakeIntoBay } from '@holdfast/domain';

import { useSignedIn } from '../live/session.js';

/** How a vehicle that does not roll is moved, and by whom. */
export type Moving = Pick<TakeIntoBay, 'movedHow' | 'movedByName'>;

/** The answer to "loaded or empty?". */
export type LoadSaid = Pick<TakeIntoBay, 'loaded' | 'loadKg'>;

export type SpotVerdict =
  | { readonly kind: 'can' }
  /** It can once somebody at the bay has said whether it is loaded. */
  | { readonly kind: 'asksLoad'; readonly refusals: readonly Refusal[] }
  | { readonly kind: 'cannot'; readonly refusals: readonly Refusal[] };

const loadCodes: readonly string[] = ['place.loadAsked', 'place.loadWeightAsked'];

/** Whether a refusal only asks for the load, at the bay. */
export const asksForLoad = (code: string): boolean => loadCodes.includes(code);

/** What would be answered if the vehicle of the visit were placed in that spot now (epoch ms of the shop). */
export const judgeSpot = (
  board: Board,
  { visit, spot, said, by, now }: { visit: Visit; spot: Spot; said: Moving & LoadSaid; by: By; now: number },
): SpotVerdict => {
  const input = { jobId: visit.job.id, bayId: spot.bay.id, spot: spot.spot, ...said };
  const refusals = wouldRefuse(board, 'takeIntoBay', input, by, now);
  if (refusals.length === 0) return { kind: 'can' };
  const asks = refusals.every((refusal) => asksForLoad(refusal.code));
  return { kind: asks ? 'asksLoad' : 'cannot', refusals };
};

/** Who is signed in, as decisions know people. */
export const useBy = (): By => {
  const { person } = useSignedIn();
  return { personId: person.id, name: person.name, roles: person.roles };
};
