import { rowsOf, visitOf, type Board, type Visit } from '@holdfast/board';
import type { Row } from '@holdfast/domain';

import type { RowVehicle } from './desk-row.js';

/** A call to make, with everything that is known of it on the board. */
export type CallToMake = {
  readonly call: Row<'call'>;
  readonly of: RowVehicle;
  readonly visit: Visit | null;
  readonly customer: Row<'customer'> | null;
  readonly contact: Row<'contact'> | null;
  readonly followUp: Row<'followUp'> | null;
};

/** Who is called: the contact of the visit, but rather one of the customer's with a number than one without. */
export const contactOf = (board: Board, visit: Visit | null, customerId: string | null): Row<'contact'> | null => {
  if (visit?.contact?.phone != null) return visit.contact;
  const contacts = rowsOf(board).list('contact', (one) => one.customerId === customerId);
  return contacts.find((one) => one.phone !== null) ?? visit?.contact ?? contacts[0] ?? null;
};

/** Without a next try, or with one whose time has come. `now` epoch ms. */
export const isDue = ({ nextTryAt }: Pick<Row<'call'>, 'nextTryAt'>, now: number): boolean =>
  nextTryAt === null || nextTryAt <= now;

const byTurn =
  (now: number) =>
  (a: CallToMake, b: CallToMake): number => {
    const [one, other] = [isDue(a.call, now), isDue(b.call, now)];
    if (one !== other) return one ? -1 : 1;
    if (one) return a.call.effectiveAt - b.call.effectiveAt;
    return (a.call.nextTryAt ?? 0) - (b.call.nextTryAt ?? 0);
  };

/** The calls that nobody has made yet: those that are due first, the oldest first; then by their next try. */
export const callsToMake = (board: Board, now: number): CallToMake[] => {
  const rows = rowsOf(board);
  return rows
    .list('call', (call) => call.endedAt === null)
    .flatMap((call): CallToMake[] => {
      const vehicle = rows.find('vehicle', call.vehicleId);
      if (!vehicle) return [];
      const visit = call.jobId === null ? null : (visitOf(board, call.jobId, now) ?? null);
      const of = visit ?? {
        vehicle,
        job: null,
        cautions: rows.list('caution', (one) => one.vehicleId === vehicle.id && one.endedAt === null),
        fixes: rows.list('temporaryFix', (one) => one.vehicleId === vehicle.id && one.state !== 'ended'),
      };
      const customerId = call.customerId ?? visit?.job.customerId ?? vehicle.customerId;
      return [
        {
          call,
          of,
          visit,
          customer: rows.find('customer', customerId) ?? null,
          contact: contactOf(board, visit, customerId),
          followUp: rows.find('followUp', call.followUpId) ?? null,
        },
      ];
    })
    .sort(byTurn(now));
};
