import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { askedOf, doneLines, openParts } from '../job/job-parties.js';
import { EndCautionForm } from '../pieces/caution-forms.js';
import { StopForm } from '../pieces/clock-forms.js';
import { SecondCheckForm } from '../pieces/fix-turn-forms.js';
import { FollowUpForm } from '../pieces/follow-up-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { GoAheadForm } from '../pieces/go-ahead-form.js';
import { CarryOverForm, DropForm, FinishForm } from '../pieces/line-end-forms.js';
import { OutcomeForm } from '../pieces/outcome-form.js';
import { CancelPartForm, FitPartForm } from '../pieces/part-forms.js';
import { Entries, Entry, SmallList } from '../pieces/part.js';
import { RollsForm } from '../pieces/rolls-form.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';

export type Blocker = NonNullable<JobView['blockers']>['road'][number];
type Props = { readonly view: JobView; readonly id: string };

const LineActs = ({ view, id }: Props): ReactElement | null => {
  const { t } = useText();
  const line = view.lines.find((one) => one.id === id);
  if (line === undefined) return null;
  const jobId = view.job.id;
  const started = line.startedAt !== null || line.progress !== 'planned';
  const parts = openParts(view).filter((part) => view.partLines.some((one) => one.id === part.id && one.lineId === id));
  return (
    <>
      {started && (
        <Opener command="finishLine" label={t('handBack.finish')} about={line.title}>
          {(close) => <FinishForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {started && (
        <Opener command="carryOverLine" label={t('handBack.carryOver')} about={line.title}>
          {(close) => <CarryOverForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {!started && line.goAhead === 'withCustomer' && (
        <Opener command="recordGoAhead" label={t('handBack.goAhead')} about={line.title}>
          {(close) => <GoAheadForm line={line} jobId={jobId} asked={askedOf(view)?.name ?? null} onClose={close} />}
        </Opener>
      )}
      {!started && (
        <Opener command="addFollowUp" label={t('handBack.followUp')} about={line.title}>
          {(close) => (
            <FollowUpForm
              vehicleId={view.vehicle.id}
              jobId={jobId}
              of={{ lineId: line.id }}
              first={{ kind: 'deferred', title: line.title }}
              parts={parts}
              tickedParts={parts.map((part) => part.id)}
              onClose={close}
            />
          )}
        </Opener>
      )}
      <Opener command="dropLine" label={t('handBack.drop')} about={line.title}>
        {(close) => <DropForm line={line} jobId={jobId} onClose={close} />}
      </Opener>
    </>
  );
};

const FixActs = ({ view, id, code }: Props & { readonly code: string }): ReactElement | null => {
  const { t } = useText();
  const fix = view.temporaryFixes.find((one) => one.id === id);
  if (fix === undefined) return null;
  const jobId = view.job.id;
  if (code === 'handBack.secondCheckMissing') {
    return (
      <Opener command="recordSecondCheck" label={t('handBack.secondCheck')} about={fix.place}>
        {(close) => <SecondCheckForm fix={fix} jobId={jobId} onClose={close} />}
      </Opener>
    );
  }
  if (code !== 'handBack.fixWithoutFollowUp')
    return <span className="hf-small hf-quiet">{t('handBack.allowBelow')}</span>;
  return (
    <Opener command="addFollowUp" label={t('handBack.followUp')} about={fix.place}>
      {(close) => (
        <FollowUpForm
          vehicleId={view.vehicle.id}
          jobId={jobId}
          of={{ temporaryFixId: fix.id }}
          first={{ kind: 'permanentRepair', title: fix.endedByWhat }}
          parts={openParts(view)}
          onClose={close}
        />
      )}
    </Opener>
  );
};

const PartActs = ({ view, id }: Props): ReactElement | null => {
  const { t } = useText();
  const part = view.partLines.find((one) => one.id === id);
  if (part === undefined) return null;
  const jobId = view.job.id;
  return (
    <>
      {part.here !== '0' && (
        <Opener command="fitPart" label={t('handBack.fit')} about={part.description}>
          {(close) => <FitPartForm part={part} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      <Opener command="addFollowUp" label={t('handBack.followUp')} about={part.description}>
        {(close) => (
          <FollowUpForm
            vehicleId={view.vehicle.id}
            jobId={jobId}
            first={{ kind: 'permanentRepair', title: part.description }}
            parts={openParts(view)}
            tickedParts={[part.id]}
            onClose={close}
          />
        )}
      </Opener>
      <Opener command="cancelPart" label={t('handBack.cancel')} about={part.description}>
        {(close) => <CancelPartForm part={part} jobId={jobId} onClose={close} />}
      </Opener>
    </>
  );
};

const ClockActs = ({ view, id }: Props): ReactElement | null => {
  const { t } = useText();
  const clock = view.clocks.find((one) => one.id === id);
  const title = view.lines.find((line) => line.id === clock?.lineId)?.title ?? '';
  if (clock === undefined) return null;
  return (
    <Opener command="stopWork" label={t('handBack.stop')} about={title}>
      {(close) => <StopForm clock={clock} title={title} jobId={view.job.id} onClose={close} />}
    </Opener>
  );
};

const ConcernActs = ({ view, id }: Props): ReactElement | null => {
  const { t } = useText();
  const concern = view.concerns.find((one) => one.id === id);
  if (concern === undefined) return null;
  return (
    <Opener command="recordConcernOutcome" label={t('handBack.outcome')} about={concern.words}>
      {(close) => <OutcomeForm concern={concern} jobId={view.job.id} onClose={close} />}
    </Opener>
  );
};

const CautionActs = ({ view, id }: Props): ReactElement | null => {
  const { t } = useText();
  const caution = view.cautions.find((one) => one.id === id);
  if (caution === undefined) return null;
  return (
    <Opener command="endCaution" label={t('handBack.endCaution')} about={t(`word.caution.${caution.code}`)}>
      {(close) => <EndCautionForm caution={caution} doneLines={doneLines(view)} jobId={view.job.id} onClose={close} />}
    </Opener>
  );
};

/** What mends a reason, right beside it. */
const Acts = ({ view, blocker }: { readonly view: JobView; readonly blocker: Blocker }): ReactElement | null => {
  const { t } = useText();
  const { way, code } = blocker;
  switch (way?.table) {
    case 'clock':
      return <ClockActs view={view} id={way.id} />;
    case 'workLine':
      return <LineActs view={view} id={way.id} />;
    case 'concern':
      return <ConcernActs view={view} id={way.id} />;
    case 'caution':
      return <CautionActs view={view} id={way.id} />;
    case 'temporaryFix':
      return <FixActs view={view} id={way.id} code={code} />;
    case 'partLine':
      return <PartActs view={view} id={way.id} />;
    case 'vehicle':
      return (
        <Opener command="recordRolls" label={t('handBack.rolls')}>
          {(close) => <RollsForm vehicle={view.vehicle} jobId={view.job.id} onClose={close} />}
        </Opener>
      );
    default:
      return null;
  }
};

/** A concern is told by its number; its words stand below. */
const aboutConcern = (view: JobView, { way }: Blocker): string[] =>
  way?.table === 'concern' ? view.concerns.filter((one) => one.id === way.id).map((one) => one.words) : [];

/** Everything in the way, all at once. */
export const Blockers = (props: { readonly view: JobView; readonly blockers: readonly Blocker[] }): ReactElement => {
  const { t } = useText();
  const { view, blockers } = props;
  const place = ({ way }: Blocker): string | null => {
    if (way === null) return null;
    return way.table === 'vehicle' ? vehiclePath(way.id) : `${jobPath(view.job.id)}#${way.table}-${way.id}`;
  };
  return (
    <Entries>
      {blockers.map((blocker) => {
        const to = place(blocker);
        return (
          <Entry
            key={`${blocker.code} ${blocker.way?.id ?? ''}`}
            acts={
              <>
                <Acts view={view} blocker={blocker} />
                {to !== null && (
                  <Link className="hf-button hf-button-small hf-look-plain" href={to}>
                    {t('handBack.goThere')}
                  </Link>
                )}
              </>
            }
          >
            <p className="hf-entry-title">{blocker.sentence}</p>
            <SmallList lines={aboutConcern(view, blocker)} />
          </Entry>
        );
      })}
    </Entries>
  );
};
