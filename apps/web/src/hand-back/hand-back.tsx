// hand-back/ hides the way a vehicle leaves. It guarantees that everything in the way is shown at once, each with what
// mends it right beside it, that a hand-back by road with a tier-1 fix is worded, allowed and signed for line by line
// (rule 7), that a release unfinished says beforehand what it leaves outstanding, and that the sheet is drawn from what was frozen, never from the rows as they are today.
import type { JobView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';
import { Link, useParams } from 'wouter';

import './hand-back.css';
import { useJob } from '../job/use-job.js';
import { SignedIn } from '../live/signed-in.js';
import { Part } from '../pieces/part.js';
import { ReadState } from '../pieces/read-state.js';
import { VehicleHead } from '../pieces/vehicle-head.js';
import { jobPath } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { Blockers } from './blockers.js';
import { BecomesOutstanding, type Door, Doors, type Leaves, VoidSheets } from './doors.js';
import { OpenPoints } from './open-points.js';
import { Receive } from './receive.js';
import { releaseListOf } from './release-list.js';
import { type Allowances, allowedFixes, RoadAllowances, tierOneFixes } from './road-allowances.js';
import { Sheet } from './sheet.js';

const Head = ({ view, door }: { readonly view: JobView; readonly door: Door }): ReactElement => {
  const { t } = useText();
  const { job, vehicle, customer } = view;
  return (
    <>
      <ScreenHead
        heading={t(door === 'release' ? 'handBack.releaseHeading' : 'handBack.heading', { plate: vehicle.plate })}
        under={t('handBack.under', { number: job.number, customer: customer?.name ?? t('job.internal') })}
        acts={
          <Link className="hf-button hf-button-small hf-look-frame" href={jobPath(job.id)}>
            {t('handBack.toJob')}
          </Link>
        }
      />
      <VehicleHead
        plate={vehicle.plate}
        description={vehicle.description}
        cautions={view.cautions.filter((caution) => caution.endedAt === null)}
        fixCount={view.temporaryFixes.filter((fix) => fix.state !== 'ended').length}
        size="large"
      />
      <VoidSheets view={view} />
    </>
  );
};

const Leaving = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const { job, vehicle } = view;
  const [door, setDoor] = useState<Door>('handBack');
  const [leaves, setLeaves] = useState<Leaves>(vehicle.rolls && vehicle.mayBeDriven ? 'road' : 'transporter');
  const [receivedHow, setReceivedHow] = useState<'there' | 'telephone'>('there');
  const [allowances, setAllowances] = useState<Allowances>({});
  const byRoad = leaves === 'road';
  const allowed = allowedFixes(allowances);
  const blockers = (view.blockers?.[leaves] ?? []).filter(
    ({ code, way }) => !(code === 'handBack.roadNotAllowed' && way !== null && allowed.includes(way.id)),
  );
  const list = releaseListOf(view, blockers, leaves);
  const inTheWay = door === 'release' ? list.inTheWay : blockers;
  return (
    <article className="hf-read" data-job={job.number}>
      <Head view={view} door={door} />
      <div className="hf-hand-back">
        <Doors door={door} leaves={leaves} onDoor={setDoor} onLeaves={setLeaves} />
        <Part heading={t('handBack.inTheWay')} under={t('handBack.inTheWayUnder', { count: inTheWay.length })}>
          {inTheWay.length === 0 ? (
            <p>{t('handBack.clear', { leaves: t(`word.leaves.${leaves}`) })}</p>
          ) : (
            <Blockers view={view} blockers={inTheWay} />
          )}
        </Part>
        <OpenPoints view={view} />
        {door === 'release' && <BecomesOutstanding list={list} />}
        {byRoad && tierOneFixes(view).length > 0 && (
          <RoadAllowances view={view} receivedHow={receivedHow} allowances={allowances} onChange={setAllowances} />
        )}
        <Receive
          view={view}
          door={door}
          leaves={leaves}
          receivedHow={receivedHow}
          onHow={setReceivedHow}
          allowances={byRoad ? allowances : {}}
        />
      </div>
    </article>
  );
};

/** A visit that is only booked has nothing to hand back. */
const NotHere = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  return (
    <EmptyState heading={t('handBack.notHere', { plate: view.vehicle.plate })}>
      <Link href={jobPath(view.job.id)}>{t('handBack.toJob')}</Link>
    </EmptyState>
  );
};

const HandBack = (): ReactElement => {
  const { t } = useText();
  const { id } = useParams<{ id: string }>();
  const read = useJob(id);
  const view = read.data?.job.id === id ? read.data : undefined;
  if (view === undefined) return <ReadState error={read.error} missing={t('job.notThere')} />;
  if (view.job.endedAt !== null) return <Sheet view={view} />;
  return view.job.arrivedAt === null ? <NotHere view={view} /> : <Leaving view={view} />;
};

/** The vehicle goes to its owner: what blocks it, how it leaves, and then its sheet. */
export const HandBackScreen = (): ReactElement => (
  <SignedIn>
    <HandBack />
  </SignedIn>
);
