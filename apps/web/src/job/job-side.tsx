import { runningTotal, visitOf } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import { minus } from '@holdfast/domain';
import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { OdometerForm } from '../pieces/odometer-form.js';
import { PromisedForm } from '../pieces/promised-form.js';
import { RollsForm } from '../pieces/rolls-form.js';
import { BoardNoteForm, CancelJobForm } from '../pieces/small-turn-forms.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { handBackPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { lastReading, pricedLines } from './job-parties.js';

type Props = { readonly view: JobView };

const Row = ({ name, children, act }: { name: string; children: ReactNode; act?: ReactNode }): ReactElement => (
  <div className="hf-job-fact">
    <dt>{name}</dt>
    <dd>
      <div>{children}</div>
      {act}
    </dd>
  </div>
);

/** The money of the visit: so far, given, and what is left of it or how far it is over. */
const Total = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  const { soFar, given, over, unpriced, charged } = runningTotal(pricedLines(view));
  const between = over ? minus(soFar, given) : minus(given, soFar);
  return (
    <div className="hf-job-total">
      <dl>
        <div>
          <dt>{t('job.total')}</dt>
          <dd>{format.money(soFar)}</dd>
        </div>
        <div>
          <dt>{t('job.given')}</dt>
          <dd>{format.money(given)}</dd>
        </div>
        <div>
          <dt>{t(over ? 'job.overBy' : 'job.left')}</dt>
          <dd>{format.money(between)}</dd>
        </div>
      </dl>
      {over && <p className="hf-entry-title">{t('job.over')}</p>}
      {charged !== '0' && (
        <p className="hf-small hf-quiet">{t('job.chargedInIt', { amount: format.money(charged) })}</p>
      )}
      {unpriced > 0 && <p className="hf-small hf-quiet">{t('job.unpriced', { count: unpriced })}</p>}
    </div>
  );
};

const Leaving = ({ view }: Props): ReactElement | null => {
  const { t } = useText();
  if (view.blockers === null) return null;
  const { road, transporter } = view.blockers;
  const words =
    road.length === 0
      ? t('job.ready')
      : transporter.length === 0
        ? t('job.readyTransporter', { count: road.length })
        : t('job.notReady', { count: road.length });
  return <>{words}</>;
};

const PromisedTime = ({ view: { job } }: Props): ReactElement => {
  const { t, format } = useText();
  const now = useNow();
  const promised = job.promisedAt === null ? null : Date.parse(job.promisedAt);
  const open = job.endedAt === null;
  return (
    <Row
      name={t('job.promised')}
      act={
        open && (
          <Opener command="changePromisedTime" label={t('job.changePromise')} about={t('job.promised')}>
            {(close) => <PromisedForm job={job} promisedAt={promised} onClose={close} />}
          </Opener>
        )
      }
    >
      {promised === null ? t('job.noPromise') : format.moment(promised, now)}
      {open && promised !== null && promised < now && <strong> {t('job.late')}</strong>}
    </Row>
  );
};

const Contact = ({ view: { job, contacts } }: Props): ReactElement | null => {
  const { t, format } = useText();
  const contact = contacts.find((one) => one.id === job.contactId) ?? contacts.find((one) => one.endedAt === null);
  if (contact === undefined) return null;
  const { name, phone, mayAgreeAny, mayAgreeUpTo } = contact;
  const agrees = mayAgreeUpTo === null ? null : t('job.agrees', { amount: format.money(mayAgreeUpTo) });
  return (
    <Row name={t('job.contact')}>
      {name}
      {phone !== null && (
        <>
          {', '}
          <a href={`tel:${phone}`}>{phone}</a>
        </>
      )}
      <span className="hf-small hf-quiet"> {mayAgreeAny ? t('job.agreesAny') : agrees}</span>
    </Row>
  );
};

const Odometer = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  const { job, vehicle } = view;
  const last = lastReading(view);
  const isLater = last !== null && (last.value !== job.odometerIn || last.unit !== job.odometerUnit);
  return (
    <Row
      name={t('job.odometer')}
      act={
        job.endedAt === null && (
          <Opener command="recordOdometer" label={t('job.readOdometer')} about={t('job.odometer')}>
            {(close) => (
              <OdometerForm
                vehicleId={vehicle.id}
                plate={vehicle.plate}
                jobId={job.id}
                unit={job.odometerUnit}
                last={last}
                onClose={close}
              />
            )}
          </Opener>
        )
      }
    >
      {job.odometerIn === null ? t('job.notRead') : format.distance(job.odometerIn, job.odometerUnit)}
      {isLater && (
        <span className="hf-small hf-quiet">
          {' '}
          {t('job.lastRead', { reading: format.distance(last.value, last.unit) })}
        </span>
      )}
    </Row>
  );
};

const BoardNote = ({ view: { job } }: Props): ReactElement | null => {
  const { t } = useText();
  const open = job.endedAt === null;
  if (!open && job.boardNote === null) return null;
  return (
    <Row
      name={t('job.boardNote')}
      act={
        open && (
          <Opener command="setBoardNote" label={t('job.changePromise')} about={t('job.boardNote')}>
            {(close) => <BoardNoteForm job={job} onClose={close} />}
          </Opener>
        )
      }
    >
      {job.boardNote ?? t('job.noBoardNote')}
    </Row>
  );
};

/** Until something was done the visit can be called off; an expected one always. */
const Cancel = ({ view: { job, vehicle, clocks, lines } }: Props): ReactElement | null => {
  const { t } = useText();
  const isExpected = job.arrivedAt === null;
  const untouched = clocks.length === 0 && lines.every((line) => line.startedAt === null);
  if (job.endedAt !== null || !(isExpected || untouched)) return null;
  return (
    <Opener command="cancelJob" label={t('job.cancelJob')} look="plain">
      {(close) => <CancelJobForm job={job} plate={vehicle.plate} isExpected={isExpected} onClose={close} />}
    </Opener>
  );
};

/** What is asked of a job most often, beside the page: the money, the promise, the place, whether it may go. */
export const JobSide = ({ view }: Props): ReactElement => {
  const { t } = useText();
  const now = useNow();
  const { job, vehicle } = view;
  const board = useBoard();
  const visit = visitOf(board, job.id, now);
  const words = useVisitWords(board, now);
  const moves = vehicle.mayBeDriven ? 'driven' : vehicle.rolls ? 'rollsOnly' : 'notRolls';
  const open = job.endedAt === null;
  return (
    <div className="hf-job-side">
      <Total view={view} />
      <dl className="hf-job-facts">
        <PromisedTime view={view} />
        {visit !== undefined && open && (
          <Row name={t('job.where')}>
            {words.place(visit)}
            <span className="hf-small hf-quiet"> {words.state(visit)}</span>
          </Row>
        )}
        <Row
          name={t('job.moves')}
          act={
            open && (
              <Opener command="recordRolls" label={t('job.changePromise')} about={t('job.moves')}>
                {(close) => <RollsForm vehicle={vehicle} jobId={job.id} onClose={close} />}
              </Opener>
            )
          }
        >
          {t(`job.${moves}`)}
        </Row>
        <Odometer view={view} />
        <BoardNote view={view} />
        <Contact view={view} />
        {view.blockers !== null && job.arrivedAt !== null && (
          <Row name={t('job.leaving')} act={<Link href={handBackPath(job.id)}>{t('job.handBack')}</Link>}>
            <Leaving view={view} />
          </Row>
        )}
      </dl>
      <Cancel view={view} />
    </div>
  );
};
