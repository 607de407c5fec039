import { runningTotal, visitOf } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import { useState, type ReactElement, type ReactNode } from 'react';
import { Link } from 'wouter';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { LogList } from '../pieces/log-list.js';
import { PromisedForm } from '../pieces/promised-form.js';
import { RollsForm } from '../pieces/rolls-form.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { handBackPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { titlesOf } from './job-parties.js';

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

const Total = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  const { soFar, given, over, unpriced } = runningTotal(view.lines);
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
      </dl>
      {over && <p className="hf-entry-title">{t('job.over')}</p>}
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
  const contact = contacts.find((one) => one.id === job.contactId) ?? contacts[0];
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

/** What is asked of a job most often, beside the page: the money, the promise, the place, whether it may go. */
export const JobSide = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
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
        <Row name={t('job.odometer')}>
          {job.odometerIn === null ? t('job.notRead') : format.distance(job.odometerIn, job.odometerUnit)}
        </Row>
        <Contact view={view} />
        {view.blockers !== null && (
          <Row name={t('job.leaving')} act={<Link href={handBackPath(job.id)}>{t('job.handBack')}</Link>}>
            <Leaving view={view} />
          </Row>
        )}
      </dl>
    </div>
  );
};

const shownFirst = 24;

/** Everything recorded on this visit, newest first. */
export const JobLog = ({ view }: Props): ReactElement => {
  const { t } = useText();
  const [all, setAll] = useState(false);
  const entries = all ? view.log : view.log.slice(0, shownFirst);
  return (
    <section className="hf-job-log" aria-label={t('job.log')}>
      <h2>{t('job.log')}</h2>
      <LogList entries={entries} titles={titlesOf(view)} />
      {view.log.length > entries.length && (
        <Button
          size="small"
          onPress={() => {
            setAll(true);
          }}
        >
          {t('job.logAll', { count: view.log.length })}
        </Button>
      )}
    </section>
  );
};
