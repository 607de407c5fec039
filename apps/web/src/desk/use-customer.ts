import type { CustomerView, VehicleView } from '@holdfast/contract';
import { calendarOfBoard } from '@holdfast/board';

import { useRead } from '../live/reads.js';
import { useBoard, useNow } from '../live/use-board.js';

/** A customer with contacts, standing go-aheads and vehicles; undefined while it is read, or where none is named. */
export const useCustomer = (customerId: string | null): CustomerView | undefined => {
  const path = customerId === null ? null : `/api/customers/${customerId}`;
  const { data } = useRead<CustomerView>(path, ['customers']);
  return data?.customer.id === customerId ? data : undefined;
};

/** The standing go-aheads of a vehicle that hold today; one that was given for a single visit only while that goes on. */
export const useStanding = ({ standing, jobs }: Pick<VehicleView, 'standing' | 'jobs'>): VehicleView['standing'] => {
  const today = calendarOfBoard(useBoard()).dateOf(useNow(60_000));
  const open = new Set(jobs.filter((job) => job.endedAt === null).map((job) => job.id));
  return standing.filter(
    ({ endedAt, untilDay, jobId }) =>
      endedAt === null && (untilDay === null || untilDay >= today) && (jobId === null || open.has(jobId)),
  );
};
