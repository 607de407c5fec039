import type { JobView } from '@holdfast/contract';
import { useEffect, type ReactElement } from 'react';
import { Link, useParams } from 'wouter';

import './job.css';
import { SignedIn } from '../live/signed-in.js';
import { useMay } from '../live/session.js';
import { useNow } from '../live/use-board.js';
import { Part } from '../pieces/part.js';
import { ReadState } from '../pieces/read-state.js';
import { VehicleHead } from '../pieces/vehicle-head.js';
import { handBackPath, vehiclePath } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { TimesPart } from '../times/times-part.js';
import { useText } from '../text/use-text.js';
import { useJob } from './use-job.js';
import { JobConcerns } from './job-concerns.js';
import { JobContact, JobSheets } from './job-contact.js';
import { JobFindings } from './job-findings.js';
import { JobFixes, JobFollowUps } from './job-fixes.js';
import { JobHolds } from './job-holds.js';
import { JobIndex } from './job-index.js';
import { JobLines } from './job-lines.js';
import { JobParts } from './job-parts.js';
import { JobLog } from './job-log.js';
import { AskOpener, JobQuestions } from './job-questions.js';
import { JobSide } from './job-side.js';
import { ArrangeOpener, JobSublets } from './job-sublets.js';
import { JobCautions } from './job-top.js';
import { JobWheels } from './job-wheels.js';

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

/** How far the visit has begun: expected, here and not checked in, or in. */
const beginningOf = ({ expectedAt, arrivedAt, checkedInAt }: JobView['job']) => {
  if (checkedInAt !== null) return { text: 'job.titleUnder', at: checkedInAt } as const;
  if (arrivedAt !== null) return { text: 'job.titleArrived', at: arrivedAt } as const;
  return { text: 'job.titleExpected', at: expectedAt } as const;
};

/** How the visit ended, in a sentence. */
const Ended = ({ view: { job } }: { readonly view: JobView }): ReactElement | null => {
  const { t, format } = useText();
  const now = useNow(60_000);
  if (job.endedAt === null) return null;
  const at = format.moment(Date.parse(job.endedAt), now);
  const words = job.endWords ?? 'empty';
  if (job.endedHow === 'cancelled') return <p className="hf-job-ended">{t('job.cancelled', { at, words })}</p>;
  const leaves = job.leftBy === null ? '' : t(`word.leaves.${job.leftBy}`);
  return (
    <p className="hf-job-ended">
      {job.endedHow === 'released' ? t('job.released', { leaves, at, words }) : t('job.ended', { leaves, at })}
    </p>
  );
};

const Head = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const { job, vehicle, customer } = view;
  const beginning = beginningOf(job);
  const under = [
    ...(job.kind === 'normal' ? [] : [t('job.kind', { kind: t(`word.job.${job.kind}`) })]),
    ...(job.keyTag === null ? [] : [t('job.key', { key: job.keyTag })]),
    ...(job.waitsHere ? [t('job.waitsHere')] : []),
  ].join(' · ');
  return (
    <>
      <ScreenHead
        heading={t('job.heading', { number: job.number })}
        under={t(beginning.text, {
          customer: customer?.name ?? t('job.internal'),
          since: beginning.at === null ? '' : format.moment(Date.parse(beginning.at), now),
        })}
        acts={
          <>
            <Link className="hf-button hf-button-small hf-look-frame" href={vehiclePath(vehicle.id)}>
              {t('job.vehicle')}
            </Link>
            {job.arrivedAt !== null && job.endedHow !== 'cancelled' && (
              <Link className="hf-button hf-button-small hf-look-ink" href={handBackPath(job.id)}>
                {t(job.endedAt === null ? 'job.handBack' : 'job.sheet')}
              </Link>
            )}
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
      <Ended view={view} />
    </>
  );
};

/** Ways to parts of the page that have nothing yet and are therefore not drawn. */
const Seldom = ({ view }: { readonly view: JobView }): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const asks = view.questions.length === 0 && may.command('askQuestion');
  const arranges = view.sublets.length === 0 && may.command('arrangeSublet');
  if (view.job.endedAt !== null || !(asks || arranges)) return null;
  return (
    <Part heading={t('job.seldom')}>
      <div className="hf-row">
        {asks && <AskOpener view={view} />}
        {arranges && <ArrangeOpener view={view} />}
      </div>
    </Part>
  );
};

/** The times of the visit, which are put right here. */
const JobTimes = ({ view: { job } }: { readonly view: JobView }): ReactElement | null => {
  const may = useMay();
  if (job.arrivedAt === null || !may.read('times')) return null;
  return (
    <TimesPart query={`job=${job.id}`} hints={[`job:${job.id}`]} jobId={job.id} from={Date.parse(job.arrivedAt)} />
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
            <JobQuestions view={view} />
            <JobFixes view={view} />
            <JobWheels view={view} />
            <JobSublets view={view} />
            <JobFindings view={view} />
            <JobFollowUps view={view} />
            <JobContact view={view} />
            <JobSheets view={view} />
            <Seldom view={view} />
            <JobTimes view={view} />
            <JobLog view={view} />
          </div>
        </div>
        <div className="hf-job-column">
          <JobSide view={view} />
          <JobIndex view={view} />
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
