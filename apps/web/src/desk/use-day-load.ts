import type { DayLoadView } from '@holdfast/contract';
import { useMemo } from 'react';

import { useRead } from '../live/reads.js';
import { useBoard, useNow } from '../live/use-board.js';

/** How far ahead the first day with room is looked for. */
export const daysAhead = 60;

/** Today's hours of people run out as the day goes on: read anew every ten minutes all the same. */
const everyMs = 600_000;

type Wanted = { readonly from: string | null; readonly days?: number; readonly isWanted?: boolean };

/**
 * The load of the days from `from` on (a day of the shop's zone; null: from today on). Read again whenever a visit or a
 * line changes: what the board holds of them is part of the name under which the answer is kept.
 */
export const useDayLoad = ({ from, days = daysAhead, isWanted = true }: Wanted): DayLoadView | undefined => {
  const { job, workLine } = useBoard().tables;
  const turn = Math.floor(useNow(60_000) / everyMs);
  const state = useMemo(() => {
    const sum = [...job.values(), ...workLine.values()].reduce((versions, row) => versions + row.version, 0);
    return `load:${String(job.size)}:${String(workLine.size)}:${String(sum)}`;
  }, [job, workLine]);
  const start = from === null ? '' : `from=${from}&`;
  const path = isWanted ? `/api/day-load?${start}days=${String(days)}` : null;
  return useRead<DayLoadView>(path, ['bay-time', 'shop', `${state}:${String(turn)}`]).data;
};
