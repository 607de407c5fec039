import type { VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import { useRead } from '../live/reads.js';
import { Refusal } from '../live/refusal.js';
import { useSend } from '../live/use-send.js';
import { vehiclePath, pathOf } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { FindVehicle } from './find-vehicle.js';
import { checkInOf, newDraft, type Draft } from './draft.js';
import { StepConcerns } from './step-concerns.js';
import { StepStands } from './step-stands.js';
import { StepWho, whoIsSaid } from './step-who.js';
import { WalkRound } from './walk-round.js';

const steps = ['vehicle', 'who', 'concerns', 'stands', 'photos'] as const;
type Step = (typeof steps)[number];

const Steps = ({ step }: { readonly step: Step }): ReactElement => {
  const { t } = useText();
  return (
    <ol className="hf-steps" aria-label={t('checkIn.steps')}>
      {steps.map((one, at) => (
        <li key={one} aria-current={one === step ? 'step' : undefined}>
          {`${String(at + 1)} ${t(`checkIn.step.${one}`)}`}
        </li>
      ))}
    </ol>
  );
};

/** The vehicle that is being checked in, and what is still outstanding on it. */
const Chosen = ({ view }: { readonly view: VehicleView }): ReactElement => {
  const { t } = useText();
  const open = view.followUps.filter((followUp) => followUp.state === 'open').map((followUp) => followUp.title);
  const fixes = view.temporaryFixes.filter((fix) => fix.state !== 'ended').map((fix) => fix.place);
  return (
    <div>
      <p>
        <Link className="hf-code hf-entry-title" href={vehiclePath(view.vehicle.id)}>
          {view.vehicle.plate}
        </Link>{' '}
        {view.vehicle.description}
      </p>
      {open.length + fixes.length > 0 && (
        <p className="hf-small">
          <strong>{t('checkIn.outstanding')}</strong> {[...fixes, ...open].join(' · ')}
        </p>
      )}
    </div>
  );
};

type PathProps = {
  readonly view: VehicleView;
  readonly step: Exclude<Step, 'vehicle' | 'photos'>;
  readonly onStep: (step: Step) => void;
  readonly onDone: (jobId: string) => void;
};

/** Who, what and how; then one command. */
const Path = ({ view, step, onStep, onDone }: PathProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [draft, setDraft] = useState<Draft>(() => newDraft(view));
  const change = (part: Partial<Draft>): void => {
    setDraft((before) => ({ ...before, ...part }));
  };
  const send = async (): Promise<void> => {
    const done = { text: 'checkIn.done', values: { plate: view.vehicle.plate } } as const;
    if (await sending.run('checkIn', checkInOf(draft), done)) onDone(draft.jobId);
  };
  const at = steps.indexOf(step);
  const mayGoOn =
    step === 'who'
      ? whoIsSaid(draft)
      : step === 'concerns'
        ? draft.concerns.some((one) => one.words.trim() !== '')
        : true;
  return (
    <>
      <Chosen view={view} />
      {step === 'who' && <StepWho view={view} draft={draft} onChange={change} />}
      {step === 'concerns' && <StepConcerns draft={draft} onChange={change} />}
      {step === 'stands' && <StepStands view={view} draft={draft} onChange={change} />}
      <Refusal problem={sending.problem} />
      <div className="hf-step-acts">
        <Button
          onPress={() => {
            onStep(steps[at - 1] ?? 'vehicle');
          }}
        >
          {t('checkIn.back')}
        </Button>
        {step === 'stands' ? (
          <Button look="ink" command="checkIn" isPending={sending.pending} onPress={() => void send()}>
            {t('checkIn.act')}
          </Button>
        ) : (
          <Button
            look="ink"
            isDisabled={!mayGoOn}
            onPress={() => {
              onStep(steps[at + 1] ?? 'stands');
            }}
          >
            {t('checkIn.next')}
          </Button>
        )}
      </div>
    </>
  );
};

/** A vehicle comes in, in a few steps; what only looks wrong is kept and flagged, nothing stops it. */
export const CheckIn = (): ReactElement => {
  const { t } = useText();
  const [step, setStep] = useState<Step>('vehicle');
  const [vehicleId, setVehicleId] = useState<string | null>(null);
  const [jobId, setJobId] = useState<string | null>(null);
  const path = vehicleId === null ? null : `/api/vehicles/${vehicleId}`;
  const view = useRead<VehicleView>(path, [`vehicle:${vehicleId ?? ''}`]).data;
  const here = view?.vehicle.id === vehicleId ? view : undefined;
  return (
    <>
      <ScreenHead
        heading={t('checkIn.heading')}
        acts={
          <Link className="hf-button hf-button-small hf-look-frame" href={pathOf.desk}>
            {t('checkIn.leave')}
          </Link>
        }
      />
      <div className="hf-check-in">
        <Steps step={step} />
        {step === 'vehicle' && (
          <FindVehicle
            onChosen={(id) => {
              setVehicleId(id);
              setStep('who');
            }}
          />
        )}
        {step === 'photos' && jobId !== null && here !== undefined && (
          <WalkRound jobId={jobId} plate={here.vehicle.plate} />
        )}
        {step !== 'vehicle' && step !== 'photos' && (
          <>
            {here === undefined ? (
              <p className="hf-quiet">{t('shell.loading')}</p>
            ) : (
              <Path
                key={here.vehicle.id}
                view={here}
                step={step}
                onStep={setStep}
                onDone={(id) => {
                  setJobId(id);
                  setStep('photos');
                }}
              />
            )}
          </>
        )}
      </div>
    </>
  );
};
