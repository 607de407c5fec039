import type { Visit } from '@holdfast/board';
import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';

import { shownCautions } from '../pieces/vehicle-head.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { CautionSlot } from '../ui/caution-slot.js';
import { Plate } from '../ui/plate.js';

type DeskRowProps = {
  readonly visit: Visit;
  /** Under the vehicle: customer, key, whatever the list is about. */
  readonly under?: ReactNode;
  readonly children?: ReactNode;
  readonly acts?: ReactNode;
};

/** One visit in a list of the desk: the vehicle first, always in the same slots; then what the list is about. */
export const DeskRow = ({ visit, under, children, acts }: DeskRowProps): ReactElement => {
  const { t } = useText();
  return (
    <li className="hf-desk-row" data-job={visit.job.number}>
      <div className="hf-desk-vehicle">
        <CautionSlot cautions={shownCautions(visit.cautions, t)} />
        <Link
          className="hf-desk-plate"
          href={jobPath(visit.job.id)}
          aria-label={`${visit.vehicle.plate}, ${t('desk.job', { number: visit.job.number })}`}
        >
          <Plate plate={visit.vehicle.plate} fixCount={visit.fixes.length} />
        </Link>
        <div className="hf-desk-words">
          <span>{visit.vehicle.description}</span>
          <span className="hf-small hf-quiet">{under}</span>
        </div>
      </div>
      <div className="hf-desk-what">{children}</div>
      {acts !== undefined && <div className="hf-desk-acts">{acts}</div>}
    </li>
  );
};
