import type { JobView } from '@holdfast/contract';
import { tierOf } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { doneLines, openLines, openParts } from '../job/job-parties.js';
import { useBoard } from '../live/use-board.js';
import { stateOfWheel } from '../pieces/axle-ladder-model.js';
import { BringBackForm } from '../pieces/bring-back-form.js';
import { EndCautionForm } from '../pieces/caution-forms.js';
import { StopForm } from '../pieces/clock-forms.js';
import { SecondCheckForm } from '../pieces/fix-turn-forms.js';
import { FollowUpForm } from '../pieces/follow-up-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { OutcomeForm } from '../pieces/outcome-form.js';
import { CancelPartForm, FitPartForm } from '../pieces/part-forms.js';
import { RollsForm } from '../pieces/rolls-form.js';
import { WheelsForm } from '../pieces/wheel-forms.js';
import { wheelWords } from '../pieces/wheel-words.js';
import { useText } from '../text/use-text.js';
import { LineActs } from './line-acts.js';

type ActsProps = { readonly view: JobView; readonly id: string };

const FixActs = ({ view, id }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const fix = view.temporaryFixes.find((one) => one.id === id);
  if (fix === undefined) return null;
  const jobId = view.job.id;
  const isKnown = view.followUps.some((one) => one.id === fix.followUpId && one.state === 'open');
  const tier = tierOf(fix.system);
  return (
    <>
      {!isKnown && (
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
      )}
      {tier < 3 && fix.secondChecks.length === 0 && (
        <Opener command="recordSecondCheck" label={t('handBack.secondCheck')} about={fix.place}>
          {(close) => <SecondCheckForm fix={fix} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {isKnown && tier === 1 && <span className="hf-small hf-quiet">{t('handBack.allowBelow')}</span>}
    </>
  );
};

const PartActs = ({ view, id }: ActsProps): ReactElement | null => {
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

const ClockActs = ({ view, id }: ActsProps): ReactElement | null => {
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

const ConcernActs = ({ view, id }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const concern = view.concerns.find((one) => one.id === id);
  if (concern === undefined) return null;
  return (
    <Opener command="recordConcernOutcome" label={t('handBack.outcome')} about={concern.words}>
      {(close) => <OutcomeForm concern={concern} jobId={view.job.id} onClose={close} />}
    </Opener>
  );
};

const CautionActs = ({ view, id }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const caution = view.cautions.find((one) => one.id === id);
  if (caution === undefined) return null;
  return (
    <Opener command="endCaution" label={t('handBack.endCaution')} about={t(`word.caution.${caution.code}`)}>
      {(close) => <EndCautionForm caution={caution} doneLines={doneLines(view)} jobId={view.job.id} onClose={close} />}
    </Opener>
  );
};

/** A wheel that is off goes on; one without its torque is tightened; with all that are in the same state. */
const WheelActs = ({ view, id }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const board = useBoard();
  const wheel = board.tables.wheelRecord.get(id);
  if (wheel === undefined) return null;
  const isOff = stateOfWheel(wheel) === 'off';
  return (
    <Opener
      command={isOff ? 'recordWheelOn' : 'recordTorque'}
      label={t(isOff ? 'handBack.wheelOn' : 'handBack.torque')}
      about={wheelWords(wheel.position, t)}
    >
      {(close) => (
        <WheelsForm
          board={board}
          jobId={view.job.id}
          vehicle={view.vehicle}
          lines={openLines(view)}
          first={isOff ? 'on' : 'tightened'}
          onClose={close}
        />
      )}
    </Opener>
  );
};

const SubletActs = ({ view, id }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const sublet = view.sublets.find((one) => one.id === id);
  if (sublet === undefined) return null;
  return (
    <Opener command="bringBack" label={t('handBack.bringBack', { form: sublet.form })} about={sublet.firm}>
      {(close) => <BringBackForm sublet={sublet} plate={view.vehicle.plate} onClose={close} />}
    </Opener>
  );
};

const VehicleActs = ({ view }: ActsProps): ReactElement => {
  const { t } = useText();
  return (
    <Opener command="recordRolls" label={t('handBack.rolls')}>
      {(close) => <RollsForm vehicle={view.vehicle} jobId={view.job.id} onClose={close} />}
    </Opener>
  );
};

/** What is missing of the visit itself: that its wheels are to be tightened again is told as a follow-up. */
const JobActs = ({ view }: ActsProps): ReactElement | null => {
  const { t } = useText();
  if (view.wheels.length === 0) return null;
  return (
    <Opener command="addFollowUp" label={t('handBack.retorque')}>
      {(close) => (
        <FollowUpForm
          vehicleId={view.vehicle.id}
          jobId={view.job.id}
          first={{ kind: 'retorque', title: t('handBack.retorqueTitle') }}
          onClose={close}
        />
      )}
    </Opener>
  );
};

const actsOf: Readonly<Record<string, (props: ActsProps) => ReactElement | null>> = {
  clock: ClockActs,
  workLine: LineActs,
  concern: ConcernActs,
  caution: CautionActs,
  temporaryFix: FixActs,
  partLine: PartActs,
  wheelRecord: WheelActs,
  sublet: SubletActs,
  vehicle: VehicleActs,
  job: JobActs,
};

type BlockerActsProps = {
  readonly view: JobView;
  readonly way: { readonly table: string; readonly id: string } | null;
};

/** What mends a reason, right beside it: by the table of the row that is its way out, whatever the reason is called. */
export const BlockerActs = ({ view, way }: BlockerActsProps): ReactElement | null => {
  const Acts = way === null ? undefined : actsOf[way.table];
  return way === null || Acts === undefined ? null : <Acts view={view} id={way.id} />;
};
