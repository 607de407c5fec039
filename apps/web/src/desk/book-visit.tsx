import type { VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import './visit-flow.css';
import { useRead } from '../live/reads.js';
import { Refusal } from '../live/refusal.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { jobPath, pathOf } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { openingOn } from './booking-day.js';
import { bookingOf, newDraft, numbersAreRight, type Draft } from './draft.js';
import { FindVehicle } from './find-vehicle.js';
import { KnownVehicle } from './known-vehicle.js';
import { StepConcerns } from './step-concerns.js';
import { StepLines } from './step-lines.js';
import { StepWhen } from './step-when.js';
import { StepWho, whoIsSaid } from './step-who.js';
import { FlowHead, StepActs, Steps } from './visit-steps.js';

const steps = ['vehicle', 'who', 'what', 'when', 'booked'] as const;
type Step = (typeof steps)[number];
const stepNames = steps.map((step) => `booking.step.${step}` as const);

type Booked = { readonly jobId: string; readonly expectedAt: number };

const Done = ({ booked, plate, onAgain }: { booked: Booked; plate: string; onAgain: () => void }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow(60_000);
  const number = board.tables.job.get(booked.jobId)?.number;
  const at = format.moment(booked.expectedAt, now);
  return (
    <>
      <h2>{number === undefined ? t('booking.done', { plate }) : t('booking.doneNumber', { number, plate, at })}</h2>
      <div className="hf-step-acts">
        <Link className="hf-button hf-button-normal hf-look-ink" href={pathOf.desk}>
          {t('checkIn.leave')}
        </Link>
        <Link className="hf-button hf-button-normal hf-look-frame" href={jobPath(booked.jobId)}>
          {t('checkIn.toJob')}
        </Link>
        <Button onPress={onAgain}>{t('booking.another')}</Button>
      </div>
    </>
  );
};

type PathProps = {
  readonly view: VehicleView;
  readonly day: string | null;
  readonly step: Exclude<Step, 'vehicle' | 'booked'>;
  readonly onStep: (step: Step) => void;
  readonly onDone: (booked: Booked) => void;
};

/** Whose it is, what for, and when; then one command. */
const Path = ({ view, day, step, onStep, onDone }: PathProps): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const sending = useSend();
  const [draft, setDraft] = useState<Draft>(() => newDraft(view, null, day === null ? null : openingOn(board, day)));
  const change = (part: Partial<Draft>): void => {
    setDraft((before) => ({ ...before, ...part }));
  };
  const send = async (): Promise<void> => {
    const input = bookingOf(draft);
    if (input === null || draft.expectedAt === null) return;
    const done = { text: 'booking.done', values: { plate: view.vehicle.plate } } as const;
    if (await sending.run('bookJob', input, done)) onDone({ jobId: draft.jobId, expectedAt: draft.expectedAt });
  };
  const isReady = {
    who: whoIsSaid(draft) && numbersAreRight(draft),
    what: numbersAreRight(draft),
    when: draft.expectedAt !== null,
  }[step];
  const form = { view, draft, onChange: change };
  return (
    <>
      <KnownVehicle {...form} isFull={step === 'who'} saysVisits />
      {step === 'who' && <StepWho {...form} />}
      {step === 'what' && (
        <>
          <StepConcerns draft={draft} onChange={change} />
          <StepLines draft={draft} onChange={change} />
        </>
      )}
      {step === 'when' && <StepWhen draft={draft} onChange={change} />}
      <Refusal problem={sending.problem} />
      <StepActs
        isReady={isReady}
        onBack={() => {
          onStep(steps[steps.indexOf(step) - 1] ?? 'vehicle');
        }}
        onNext={() => {
          if (step === 'when') void send();
          else onStep(steps[steps.indexOf(step) + 1] ?? 'when');
        }}
        {...(step === 'when'
          ? { sends: { command: 'bookJob', act: t('booking.act'), isPending: sending.pending } }
          : {})}
      />
    </>
  );
};

/** A visit is booked, mostly by telephone. `day`: the one that was picked in the load (of the shop's zone). */
export const BookVisit = ({ day }: { readonly day: string | null }): ReactElement => {
  const { t } = useText();
  const [step, setStep] = useState<Step>('vehicle');
  const [vehicleId, setVehicleId] = useState<string | null>(null);
  const [booked, setBooked] = useState<Booked | null>(null);
  const path = vehicleId === null ? null : `/api/vehicles/${vehicleId}`;
  const view = useRead<VehicleView>(path, [`vehicle:${vehicleId ?? ''}`]).data;
  const known = view?.vehicle.id === vehicleId ? view : undefined;
  return (
    <>
      <FlowHead heading={t('booking.heading')} />
      <div className="hf-check-in">
        <Steps names={stepNames} at={steps.indexOf(step)} />
        {step === 'vehicle' && (
          <FindVehicle
            way="book"
            onChosen={(id) => {
              setVehicleId(id);
              setStep('who');
            }}
          />
        )}
        {step !== 'vehicle' && known === undefined && <p className="hf-quiet">{t('shell.loading')}</p>}
        {step === 'booked' && booked !== null && known !== undefined && (
          <Done
            booked={booked}
            plate={known.vehicle.plate}
            onAgain={() => {
              setVehicleId(null);
              setStep('vehicle');
            }}
          />
        )}
        {step !== 'vehicle' && step !== 'booked' && known !== undefined && (
          <Path
            key={known.vehicle.id}
            view={known}
            day={day}
            step={step}
            onStep={setStep}
            onDone={(made) => {
              setBooked(made);
              setStep('booked');
            }}
          />
        )}
      </div>
    </>
  );
};
