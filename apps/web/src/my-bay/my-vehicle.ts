import { openVisits, rowsOf, spotsInOrder, visitOf, type Board, type Spot, type Visit } from '@holdfast/board';
import { runningClockOf, type Row } from '@holdfast/domain';

/** The spot of the person's home bay: the one that is taken, else its first; undefined without a home bay. */
export const homeSpotOf = (board: Board, personId: string, now: number): Spot | undefined => {
  const homeBayId = board.tables.person.get(personId)?.homeBayId;
  const spots = spotsInOrder(board, now).filter((spot) => spot.bay.id === homeBayId);
  return spots.find((spot) => spot.use !== null) ?? spots[0];
};

export type MyVehicle = {
  readonly visit: Visit | undefined;
  /** The clock the person is on, wherever it runs. */
  readonly clock: Row<'clock'> | undefined;
  /** Chosen by hand, so not necessarily the person's own. */
  readonly isChosen: boolean;
};

/** The vehicle the person chose, else the one their clock runs on, else the one in their home bay. */
export const myVehicle = (board: Board, personId: string, chosen: string | null, now: number): MyVehicle => {
  const clock = runningClockOf(rowsOf(board), personId);
  const open = (jobId: string | undefined): Visit | undefined => {
    const visit = jobId === undefined ? undefined : visitOf(board, jobId, now);
    return visit?.job.endedAt === null ? visit : undefined;
  };
  const picked = open(chosen ?? undefined);
  const home = homeSpotOf(board, personId, now)?.use?.jobId;
  return { visit: picked ?? open(clock?.jobId) ?? open(home), clock, isChosen: picked !== undefined };
};

/** What a technician may be at: vehicles in bays first, in the order of the building, then the others by job number. */
export const candidates = (board: Board, now: number): Visit[] => {
  const order = spotsInOrder(board, now).map((spot) => spot.use?.jobId);
  const rank = (visit: Visit): number => {
    const at = order.indexOf(visit.job.id);
    return at < 0 ? order.length : at;
  };
  return openVisits(board, now).sort((a, b) => rank(a) - rank(b));
};
