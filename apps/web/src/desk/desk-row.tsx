import type { Visit } from '@holdfast/board';
import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';

import { shownCautions } from '../pieces/vehicle-head.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { CautionSlot } from '../ui/caution-slot.js';
import { Plate } from '../ui/plate.js';

/** A vehicle with its visit, or one about which somebody is called though it is gone. */
export type RowVehicle = Pick<Visit, 'vehicle' | 'cautions' | 'fixes'> & { readonly job: Visit['job'] | null };

type DeskRowProps = {
  readonly of: RowVehicle;
  /** Under the vehicle: customer, key, whatever the list is about. */
  readonly under?: ReactNode;
  readonly children?: ReactNode;
  readonly acts?: ReactNode;
};

/** One vehicle in a list of the desk: the vehicle first, always in the same slots; then what the list is about. */
export const DeskRow = ({ of, under, children, acts }: DeskRowProps): ReactElement => {
  const { t } = useText();
  const { job, vehicle, cautions, fixes } = of;
  const { plate, description } = vehicle;
  return (
    <li className="hf-desk-row" {...(job === null ? {} : { 'data-job': job.number })}>
      <div className="hf-desk-vehicle">
        <CautionSlot cautions={shownCautions(cautions, t)} />
        <Link
          className="hf-desk-plate"
          href={job === null ? vehiclePath(vehicle.id) : jobPath(job.id)}
          aria-label={job === null ? plate : `${plate}, ${t('desk.job', { number: job.number })}`}
        >
          <Plate plate={plate} fixCount={fixes.length} />
        </Link>
        <div className="hf-desk-words">
          <span>{description}</span>
          <span className="hf-small hf-quiet">{under}</span>
        </div>
      </div>
      <div className="hf-desk-what">{children}</div>
      {acts !== undefined && <div className="hf-desk-acts">{acts}</div>}
    </li>
  );
};

/** The customer of a visit with the number to ring, as far as known. */
export const whoWords = ({ customer, contact }: Visit): string =>
  [customer?.name, contact?.name === customer?.name ? null : contact?.name, contact?.phone]
    .filter((words) => words != null)
    .join(', ');
