// vehicle/ hides how the whole history of one vehicle is drawn. It guarantees that what is still on or owed stands before
// what is over, and that each finding stands beside the earlier ones at the same place.
import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link, useParams } from 'wouter';

import './vehicle.css';
import { useRead } from '../live/reads.js';
import { SignedIn } from '../live/signed-in.js';
import { nameWords } from '../pieces/customer-name.js';
import { ReadState } from '../pieces/read-state.js';
import { VehicleHead } from '../pieces/vehicle-head.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Notice } from '../ui/notice.js';
import { VehicleCustomer } from './vehicle-customer.js';
import { VehicleFacts } from './vehicle-facts.js';
import { VehicleFindings, VehicleJobs, VehicleReadings, VehicleWork } from './vehicle-history.js';
import { VehicleCautions, VehicleFixes, VehicleFollowUps } from './vehicle-outstanding.js';

const Vehicle = (): ReactElement => {
  const { t } = useText();
  const { id } = useParams<{ id: string }>();
  const read = useRead<VehicleView>(`/api/vehicles/${id}`, [`vehicle:${id}`, 'customers']);
  const view = read.data?.vehicle.id === id ? read.data : undefined;
  if (view === undefined) return <ReadState error={read.error} missing={t('vehicle.notThere')} />;
  const here = view.jobs.find((job) => job.endedAt === null && job.arrivedAt !== null);
  const expected = view.jobs.filter((job) => job.endedAt === null && job.arrivedAt === null);
  const jobId = here?.id ?? null;
  const { mergedIntoId } = view.vehicle;
  return (
    <article className="hf-read">
      {mergedIntoId !== null && (
        <Notice
          kind="note"
          lines={[
            {
              sentence: t('records.mergedInto'),
              way: { to: vehiclePath(mergedIntoId), label: t('records.toOther') },
            },
          ]}
        />
      )}
      <ScreenHead
        heading={t('vehicle.heading', { plate: view.vehicle.plate })}
        under={view.customer === null ? t('vehicle.nobody') : nameWords(view.customer.name, t)}
        acts={
          <>
            {expected.map((job) => (
              <Link key={job.id} className="hf-button hf-button-small hf-look-frame" href={jobPath(job.id)}>
                {t('vehicle.expectedJob', { number: job.number })}
              </Link>
            ))}
            {here !== undefined && (
              <Link className="hf-button hf-button-small hf-look-ink" href={jobPath(here.id)}>
                {t('vehicle.hereNow', { number: here.number })}
              </Link>
            )}
          </>
        }
      />
      <VehicleHead
        plate={view.vehicle.plate}
        description={view.vehicle.description}
        cautions={view.cautions.filter((caution) => caution.endedAt === null)}
        fixCount={view.temporaryFixes.filter((fix) => fix.state !== 'ended').length}
        size="large"
      />
      <div className="hf-vehicle">
        <VehicleCautions view={view} jobId={jobId} />
        <VehicleFixes view={view} />
        <VehicleFollowUps view={view} jobId={jobId} />
        <VehicleCustomer view={view} jobId={jobId} />
        <VehicleJobs view={view} />
        <VehicleWork view={view} />
        <VehicleFindings view={view} />
        <VehicleReadings view={view} jobId={jobId} />
        <VehicleFacts view={view} />
      </div>
    </article>
  );
};

/** One vehicle: what is outstanding on it, and everything that was recorded. */
export const VehicleScreen = (): ReactElement => (
  <SignedIn>
    <Vehicle />
  </SignedIn>
);
