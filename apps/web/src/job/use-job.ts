import type { JobView } from '@holdfast/contract';
import type { UseQueryResult } from '@tanstack/react-query';

import { useRead } from '../live/reads.js';
import { useBoard } from '../live/use-board.js';

/** The read of a job, kept fresh by every change of it, of its vehicle and of its parts. */
export const useJob = (id: string): UseQueryResult<JobView> => {
  const vehicleId = useBoard().tables.job.get(id)?.vehicleId;
  return useRead<JobView>(`/api/jobs/${id}`, [
    `job:${id}`,
    'customers',
    ...(vehicleId === undefined ? [] : [`vehicle:${vehicleId}`]),
  ]);
};
