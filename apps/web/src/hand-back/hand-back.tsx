// hand-back/ hides the way a vehicle leaves. It guarantees that everything in the way is shown at once, each with what
// mends it right beside it, that a hand-back by road with a tier-1 fix is worded, allowed and signed for line by line
// (rule 7), and that the sheet is drawn from what was frozen, never from the rows as they are today.
import type { JobView } from '@holdfast/contract';
import type { leavesBy } from '@holdfast/domain';
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
import { Choice } from '../ui/fields/choice.js';
import { Blockers } from './blockers.js';
import { Receive } from './receive.js';
import { type Allowances, allowedFixes, RoadAllowances, tierOneFixes } from './road-allowances.js';
import { Sheet } from './sheet.js';

type Leaves = (typeof leavesBy)[number];

const Leaving = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const { job, vehicle, customer } = view;
  const [leaves, setLeaves] = useState<Leaves>(vehicle.rolls && vehicle.mayBeDriven ? 'road' : 'transporter');
  const [receivedHow, setReceivedHow] = useState<'there' | 'telephone'>('there');
  const [allowances, setAllowances] = useState<Allowances>({});
  const byRoad = leaves === 'road';
  const allowed = allowedFixes(allowances);
  const blockers = (view.blockers?.[leaves] ?? []).filter(
    ({ code, way }) => !(code === 'handBack.roadNotAllowed' && way !== null && allowed.includes(way.id)),
  );
  return (
    <article className="hf-read" data-job={job.number}>
      <ScreenHead
        heading={t('handBack.heading', { plate: vehicle.plate })}
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
      <div className="hf-hand-back">
        <Part heading={t('handBack.leaves')}>
          <Choice
            label={t('handBack.leavesBy')}
            size="large"
            value={leaves}
            onChange={setLeaves}
            options={(['road', 'transporter'] as const).map((value) => ({ value, label: t(`word.leaves.${value}`) }))}
          />
        </Part>
        <Part heading={t('handBack.inTheWay')} under={t('handBack.inTheWayUnder', { count: blockers.length })}>
          {blockers.length === 0 ? (
            <p>{t('handBack.clear', { leaves: t(`word.leaves.${leaves}`) })}</p>
          ) : (
            <Blockers view={view} blockers={blockers} />
          )}
        </Part>
        {byRoad && tierOneFixes(view).length > 0 && (
          <RoadAllowances view={view} receivedHow={receivedHow} allowances={allowances} onChange={setAllowances} />
        )}
        <Receive
          view={view}
          leaves={leaves}
          receivedHow={receivedHow}
          onHow={setReceivedHow}
          allowances={byRoad ? allowances : {}}
        />
      </div>
    </article>
  );
};

const HandBack = (): ReactElement => {
  const { t } = useText();
  const { id } = useParams<{ id: string }>();
  const read = useJob(id);
  const view = read.data?.job.id === id ? read.data : undefined;
  if (view === undefined) return <ReadState error={read.error} missing={t('job.notThere')} />;
  return view.job.endedAt === null ? <Leaving view={view} /> : <Sheet view={view} />;
};

/** The vehicle goes to its owner: what blocks it, how it leaves, and then its sheet. */
export const HandBackScreen = (): ReactElement => (
  <SignedIn>
    <HandBack />
  </SignedIn>
);
