import type { JobView } from '@holdfast/contract';
import { useEffect, type ReactElement } from 'react';
import { Link, useParams } from 'wouter';

import './job.css';
import { SignedIn } from '../live/signed-in.js';
import { useNow } from '../live/use-board.js';
import { ReadState } from '../pieces/read-state.js';
import { VehicleHead } from '../pieces/vehicle-head.js';
import { handBackPath, vehiclePath } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { useJob } from './use-job.js';
import { JobFindings } from './job-findings.js';
import { JobFixes, JobFollowUps } from './job-fixes.js';
import { JobHolds } from './job-holds.js';
import { JobLines } from './job-lines.js';
import { JobParts } from './job-parts.js';
import { JobLog, JobSide } from './job-side.js';
import { JobCautions, JobConcerns } from './job-top.js';

/** A refusal leads to `#<table>-<id>`; the row is here only once the job has been read. */
const useAnchor = (isHere: boolean): void => {
  useEffect(() => {
    if (!isHere) return undefined;
    const goThere = (): void => {
      const id = decodeURIComponent(location.hash.slice(1));
      if (id !== '') document.getElementById(id)?.scrollIntoView({ block: 'center' });
    };
    goThere();
    addEventListener('hashchange', goThere);
    return () => {
      removeEventListener('hashchange', goThere);
    };
  }, [isHere]);
};

const Head = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const { job, vehicle, customer } = view;
  const under = [
    ...(job.kind === 'normal' ? [] : [t('job.kind', { kind: t(`word.job.${job.kind}`) })]),
    ...(job.keyTag === null ? [] : [t('job.key', { key: job.keyTag })]),
    ...(job.waitsHere ? [t('job.waitsHere')] : []),
    ...(job.boardNote === null ? [] : [job.boardNote]),
  ].join(' · ');
  return (
    <>
      <ScreenHead
        heading={t('job.heading', { number: job.number })}
        under={t('job.titleUnder', {
          customer: customer?.name ?? t('job.internal'),
          since: format.moment(Date.parse(job.checkedInAt), now),
        })}
        acts={
          <>
            <Link className="hf-button hf-button-small hf-look-frame" href={vehiclePath(vehicle.id)}>
              {t('job.vehicle')}
            </Link>
            <Link className="hf-button hf-button-small hf-look-ink" href={handBackPath(job.id)}>
              {job.endedAt === null ? t('job.handBack') : t('job.sheet')}
            </Link>
          </>
        }
      />
      <VehicleHead
        plate={vehicle.plate}
        description={vehicle.description}
        cautions={view.cautions.filter((caution) => caution.endedAt === null)}
        fixCount={view.temporaryFixes.filter((fix) => fix.state !== 'ended').length}
        size="large"
        {...(under === '' ? {} : { under })}
      />
      {job.endedAt !== null && job.leftBy !== null && (
        <p className="hf-job-ended">
          {t('job.ended', { leaves: t(`word.leaves.${job.leftBy}`), at: format.moment(Date.parse(job.endedAt), now) })}
        </p>
      )}
    </>
  );
};

const Job = (): ReactElement => {
  const { t } = useText();
  const { id } = useParams<{ id: string }>();
  const read = useJob(id);
  const view = read.data?.job.id === id ? read.data : undefined;
  useAnchor(view !== undefined);
  if (view === undefined) return <ReadState error={read.error} missing={t('job.notThere')} />;
  return (
    <article data-job={view.job.number}>
      <Head view={view} />
      <div className="hf-job">
        <div className="hf-job-column">
          <JobCautions view={view} />
          <div className="hf-job-page">
            <JobConcerns view={view} />
            <JobLines view={view} />
            <JobParts view={view} />
            <JobHolds view={view} />
            <JobFixes view={view} />
            <JobFindings view={view} />
            <JobFollowUps view={view} />
          </div>
        </div>
        <div className="hf-job-column">
          <JobSide view={view} />
          <JobLog view={view} />
        </div>
      </div>
    </article>
  );
};

/** One visit on one page. */
export const JobScreen = (): ReactElement => (
  <SignedIn>
    <Job />
  </SignedIn>
);
