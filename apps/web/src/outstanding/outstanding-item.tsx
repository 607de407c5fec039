import { calendarOfBoard } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useRead } from '../live/reads.js';
import { useBoard } from '../live/use-board.js';
import { ContactEntryForm } from '../pieces/contact-entry-form.js';
import { EndFixForm } from '../pieces/fix-turn-forms.js';
import { CloseFollowUpForm, FollowUpForm } from '../pieces/follow-up-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { useLimitWords } from '../pieces/limits-fields.js';
import type { Named } from '../pieces/line-form.js';
import { SmallList } from '../pieces/part.js';
import { RetorqueForm } from '../pieces/retorque-form.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { CautionSlot } from '../ui/caution-slot.js';
import { Plate } from '../ui/plate.js';
import { needsWords, windowSentence } from './outstanding-words.js';
import { type Axis, WindowDrawing } from './window-drawing.js';
import { isToldNotReturned, windowIsEmpty, type OutstandingEntry } from './windows.js';

type ItemProps = { readonly entry: OutstandingEntry; readonly axis: Axis; readonly width: number };

/** Done lines of the visit that the vehicle is here for: one of them may be the permanent repair. */
const useDoneLines = (jobId: string | null): readonly Named[] => {
  const job = useRead<JobView>(jobId === null ? null : `/api/jobs/${jobId}`, jobId === null ? [] : [`job:${jobId}`]);
  if (jobId === null) return [];
  return (job.data?.lines ?? []).filter((line) => line.progress === 'done').map(({ id, title }) => ({ id, title }));
};

type FormProps = { readonly entry: OutstandingEntry; readonly onClose: () => void };

const EndFix = ({ entry: { fix, item }, onClose }: FormProps): ReactElement | null => {
  const doneLines = useDoneLines(item.openJobId);
  if (!fix) return null;
  return (
    <EndFixForm
      fix={fix}
      doneLines={doneLines}
      {...(item.openJobId === null ? {} : { jobId: item.openJobId })}
      onClose={onClose}
    />
  );
};

const CloseFollowUp = ({ entry: { followUp, item }, onClose }: FormProps): ReactElement | null => {
  const doneLines = useDoneLines(item.openJobId);
  if (!followUp) return null;
  return (
    <CloseFollowUpForm
      followUp={followUp}
      doneLines={doneLines}
      {...(item.openJobId === null ? {} : { jobId: item.openJobId })}
      onClose={onClose}
    />
  );
};

/** A fix whose follow-up is missing gets one here, named for what ends it. */
const NewFollowUp = ({ entry: { fix, item }, onClose }: FormProps): ReactElement => (
  <FollowUpForm
    vehicleId={item.vehicle.id}
    {...(item.openJobId === null ? {} : { jobId: item.openJobId })}
    {...(fix === null
      ? {}
      : { of: { temporaryFixId: fix.id }, first: { kind: 'permanentRepair', title: fix.endedByWhat } })}
    onClose={onClose}
  />
);

const Acts = ({ entry }: { readonly entry: OutstandingEntry }): ReactElement => {
  const { t } = useText();
  const about = entry.item.vehicle.plate;
  const { followUp, item } = entry;
  return (
    <div className="hf-outstanding-acts">
      {entry.fix && (
        <Opener label={t('outstanding.act.endFix')} command="endTemporaryFix" about={`${about}, ${entry.fix.place}`}>
          {(close) => <EndFix entry={entry} onClose={close} />}
        </Opener>
      )}
      {followUp?.kind === 'retorque' && (
        <Opener label={t('outstanding.act.retorque')} command="recordRetorque" about={`${about}, ${followUp.title}`}>
          {(close) => <RetorqueForm followUp={followUp} plate={about} onClose={close} />}
        </Opener>
      )}
      {followUp && (
        <Opener
          label={t('outstanding.act.contact')}
          command="recordContact"
          look="plain"
          about={`${about}, ${followUp.title}`}
        >
          {(close) => (
            <ContactEntryForm
              vehicleId={item.vehicle.id}
              plate={about}
              followUpId={followUp.id}
              asked={item.customer?.name ?? null}
              about={followUp.title}
              onClose={close}
            />
          )}
        </Opener>
      )}
      {entry.followUp && (
        <Opener
          label={t('outstanding.act.closeFollowUp')}
          command="closeFollowUp"
          about={`${about}, ${entry.followUp.title}`}
        >
          {(close) => <CloseFollowUp entry={entry} onClose={close} />}
        </Opener>
      )}
      {entry.fix && !entry.followUp && !entry.isFurtherDown && (
        <Opener label={t('outstanding.act.followUp')} command="addFollowUp" about={`${about}, ${entry.fix.place}`}>
          {(close) => <NewFollowUp entry={entry} onClose={close} />}
        </Opener>
      )}
    </div>
  );
};

const Vehicle = ({ entry: { item, fix } }: { readonly entry: OutstandingEntry }): ReactElement => {
  const { t } = useText();
  const { tables } = useBoard();
  const { vehicle, customer, openJobId } = item;
  const cautions = [...tables.caution.values()].filter((one) => one.vehicleId === vehicle.id && one.endedAt === null);
  const onBoard = [...tables.temporaryFix.values()].filter(
    (one) => one.vehicleId === vehicle.id && one.state !== 'ended',
  );
  const number = openJobId === null ? undefined : tables.job.get(openJobId)?.number;
  return (
    <div className="hf-outstanding-vehicle">
      <CautionSlot cautions={shownCautions(cautions, t)} />
      <Link href={vehiclePath(vehicle.id)} aria-label={vehicle.plate}>
        <Plate plate={vehicle.plate} fixCount={Math.max(onBoard.length, fix === null ? 0 : 1)} />
      </Link>
      <div>
        <span>{vehicle.description}</span>
        <span className="hf-quiet hf-small">{customer?.name ?? t('outstanding.noCustomer')}</span>
        {openJobId !== null && number !== undefined && (
          <Link className="hf-small" href={jobPath(openJobId)}>
            {t('outstanding.here', { number })}
          </Link>
        )}
      </div>
    </div>
  );
};

type FollowUp = NonNullable<OutstandingEntry['followUp']>;

/** What kind it is, how urgent, what is left of it, and what was written with it. */
const FollowUpWords = ({ followUp }: { readonly followUp: FollowUp }): ReactElement => {
  const { t, format } = useText();
  const left = followUp.remainingMinutes;
  return (
    <>
      <p className="hf-quiet hf-small">
        {t('outstanding.followUp', {
          kind: t(`word.followUp.${followUp.kind}`),
          urgency: t(`word.urgency.${followUp.urgency}`),
        })}
        {left !== null && `, ${t('outstanding.remaining', { duration: format.duration(left) })}`}
      </p>
      {followUp.words !== null && <p className="hf-small">{followUp.words}</p>}
    </>
  );
};

const What = ({ entry, today }: { readonly entry: OutstandingEntry; readonly today: string }): ReactElement => {
  const { t, format } = useText();
  const limits = useLimitWords();
  const calendar = calendarOfBoard(useBoard());
  const { fix, followUp } = entry;
  const lapsed =
    followUp !== null && isToldNotReturned(entry, calendar.dateOf(Date.parse(followUp.effectiveAt)), today);
  const said = [fix, followUp].flatMap((row) => (row === null ? [] : [limits(row)])).filter((words) => words !== '');
  return (
    <div className="hf-outstanding-what">
      <h2>{fix ? t('outstanding.fix', { kind: t(`word.fixKind.${fix.kind}`), place: fix.place }) : followUp?.title}</h2>
      {fix && (
        <p className="hf-small">
          {t('outstanding.standsIn', {
            what: fix.standsInFor,
            system: t(`word.system.${fix.system}`),
            since: format.date(Date.parse(fix.since)),
          })}
          {fix.state !== 'on' && (
            <strong> {t('outstanding.fixState', { state: t(`word.fixState.${fix.state}`) })}</strong>
          )}
        </p>
      )}
      {fix && followUp && <p className="hf-small">{t('outstanding.endedBy', { title: followUp.title })}</p>}
      {entry.isFurtherDown && <p className="hf-small">{t('outstanding.furtherDown')}</p>}
      {fix && !followUp && !entry.isFurtherDown && (
        <p className="hf-small hf-outstanding-missing">{t('outstanding.noFollowUp')}</p>
      )}
      {followUp && <FollowUpWords followUp={followUp} />}
      {lapsed && <p className="hf-small hf-outstanding-missing">{t('outstanding.toldNotReturned')}</p>}
      <p>{said.length === 0 ? t('outstanding.noLimit') : [...new Set(said)].join(t('piece.limit.or'))}</p>
    </div>
  );
};

/** One thing outstanding: on which vehicle, what, before when, what it needs first, and the window between the two. */
export const OutstandingRow = ({ entry, axis, width }: ItemProps): ReactElement => {
  const text = useText();
  const { t } = text;
  const sentence = windowSentence(entry, axis.today, text);
  const needs = needsWords(entry, text);
  const calendar = calendarOfBoard(useBoard());
  const since = entry.fix === null ? null : calendar.dateOf(Date.parse(entry.fix.since));
  const table = entry.fix ? 'temporaryFix' : 'followUp';
  const isEmpty = windowIsEmpty(entry, axis.today);
  return (
    <li className="hf-outstanding" id={`${table}-${entry.key}`} data-outstanding={table}>
      <Vehicle entry={entry} />
      <What entry={entry} today={axis.today} />
      <div className="hf-outstanding-window">
        <WindowDrawing entry={entry} axis={axis} width={width} sentence={sentence} since={since} />
        <p className={isEmpty ? 'hf-small hf-outstanding-missing' : 'hf-small'} aria-hidden={width > 0}>
          {sentence}
        </p>
        {needs.length > 0 && (
          <div className="hf-small">
            <strong>{t('outstanding.needsFirst')}</strong>
            <SmallList lines={needs} />
          </div>
        )}
      </div>
      <Acts entry={entry} />
    </li>
  );
};
