import { rowsOf } from '@holdfast/board';
import type { VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import './visit-flow.css';
import { useRead } from '../live/reads.js';
import { Refusal } from '../live/refusal.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { checkInOf, newDraft, numbersAreRight, ofVisit, visitIdOf, type Draft } from './draft.js';
import { FindVehicle } from './find-vehicle.js';
import { KnownVehicle } from './known-vehicle.js';
import { StepConcerns } from './step-concerns.js';
import { StepStands } from './step-stands.js';
import { StepStanding } from './step-standing.js';
import { StepWho, useBringer, whoIsSaid } from './step-who.js';
import { FlowHead, pendingVisits, StepActs, Steps } from './visit-steps.js';
import { WalkRound } from './walk-round.js';
import { WhichVisit } from './which-visit.js';

const steps = ['vehicle', 'who', 'concerns', 'stands', 'photos'] as const;
type Step = (typeof steps)[number];
const stepNames = steps.map((step) => `checkIn.step.${step}` as const);

type PathProps = {
  readonly view: VehicleView;
  readonly bookedId: string | null;
  readonly step: Exclude<Step, 'vehicle' | 'photos'>;
  readonly onStep: (step: Step) => void;
  readonly onDone: (jobId: string) => void;
};

/** Who, what and how; then one command. A booked visit is gone on with unless somebody says otherwise. */
const Path = ({ view, bookedId, step, onStep, onDone }: PathProps): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const now = useNow(60_000);
  const sending = useSend();
  const pending = pendingVisits(board, view.vehicle.id, now);
  const [draft, setDraft] = useState<Draft>(() =>
    newDraft(view, pending.find((job) => job.id === bookedId) ?? pending[0] ?? null, null),
  );
  const change = (part: Partial<Draft>): void => {
    setDraft((before) => ({ ...before, ...part }));
  };
  const bringer = useBringer(view, draft);
  const told = rowsOf(board).list('concern', (one) => one.jobId === draft.booked?.id);
  const send = async (): Promise<void> => {
    const done = { text: 'checkIn.done', values: { plate: view.vehicle.plate } } as const;
    if (await sending.run('checkIn', checkInOf(draft, bringer), done)) onDone(visitIdOf(draft));
  };
  const isReady = {
    who: whoIsSaid(draft) && numbersAreRight(draft),
    concerns: told.length > 0 || draft.concerns.some((one) => one.words.trim() !== ''),
    stands: true,
  }[step];
  const next = steps[steps.indexOf(step) + 1] ?? 'stands';
  const form = { view, draft, onChange: change };
  return (
    <>
      <KnownVehicle {...form} isFull={step === 'who'} />
      {step === 'who' && (
        <>
          <WhichVisit
            pending={pending}
            booked={draft.booked}
            onChange={(job) => {
              change(ofVisit(view, job));
            }}
          />
          <StepWho {...form} />
          {(draft.customerId !== null || draft.customerName.trim() !== '') && <StepStanding {...form} />}
        </>
      )}
      {step === 'concerns' && <StepConcerns draft={draft} onChange={change} />}
      {step === 'stands' && <StepStands {...form} />}
      <Refusal problem={sending.problem} />
      <StepActs
        isReady={isReady}
        onBack={() => {
          onStep(steps[steps.indexOf(step) - 1] ?? 'vehicle');
        }}
        onNext={() => {
          if (step === 'stands') void send();
          else onStep(next);
        }}
        {...(step === 'stands'
          ? { sends: { command: 'checkIn', act: t('checkIn.act'), isPending: sending.pending } }
          : {})}
      />
    </>
  );
};

type AfterVehicleProps = Omit<PathProps, 'step' | 'onDone'> & { readonly step: Exclude<Step, 'vehicle'> };

/** The steps with the vehicle that is known; after the command its walk-round. */
const AfterVehicle = ({ step, ...path }: AfterVehicleProps): ReactElement | null => {
  const [jobId, setJobId] = useState<string | null>(null);
  if (step === 'photos') {
    return jobId === null ? null : <WalkRound jobId={jobId} plate={path.view.vehicle.plate} />;
  }
  return (
    <Path
      {...path}
      step={step}
      onDone={(id) => {
        setJobId(id);
        path.onStep('photos');
      }}
    />
  );
};

type CheckInProps = {
  /** The booked visit that begins, where the desk came from it. */
  readonly bookedId: string | null;
};

/** A vehicle comes in, in a few steps; what only looks wrong is kept and flagged, nothing stops it. */
export const CheckIn = ({ bookedId }: CheckInProps): ReactElement => {
  const { t } = useText();
  const bookedVehicle = useBoard().tables.job.get(bookedId ?? '')?.vehicleId ?? null;
  const [vehicleId, setVehicleId] = useState(bookedVehicle);
  const [step, setStep] = useState<Step>(bookedVehicle === null ? 'vehicle' : 'who');
  const path = vehicleId === null ? null : `/api/vehicles/${vehicleId}`;
  const view = useRead<VehicleView>(path, [`vehicle:${vehicleId ?? ''}`]).data;
  const here = view?.vehicle.id === vehicleId ? view : undefined;
  return (
    <>
      <FlowHead heading={t('checkIn.heading')} />
      <div className="hf-check-in">
        <Steps names={stepNames} at={steps.indexOf(step)} />
        {step === 'vehicle' && (
          <FindVehicle
            way="checkIn"
            onChosen={(id) => {
              setVehicleId(id);
              setStep('who');
            }}
          />
        )}
        {step !== 'vehicle' && here === undefined && <p className="hf-quiet">{t('shell.loading')}</p>}
        {step !== 'vehicle' && here !== undefined && (
          <AfterVehicle key={here.vehicle.id} view={here} bookedId={bookedId} step={step} onStep={setStep} />
        )}
      </div>
    </>
  );
};
