// times/ hides how the entries behind the figures are shown and put right: clocks, presence, stays and holds, each with
// its correction, and with what was put right before. It guarantees that both versions are readable wherever one is.
import type { TimesView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { StrikeOpener } from '../pieces/strike-form.js';
import { useText } from '../text/use-text.js';
import { AddAttendanceForm, AddClockForm, AddStayForm } from './add-forms.js';
import { CorrectAttendanceForm, CorrectClockForm, CorrectHoldForm, CorrectStayForm } from './correct-forms.js';
import { useCorrectionWords, useStretch } from './times-words.js';

type Props = {
  readonly view: TimesView;
  /** The visit that this is about; null for all of some days. */
  readonly jobId: string | null;
  /** Where the fields of what is added begin, epoch ms. */
  readonly from: number | null;
};

const useNames = (view: TimesView) => {
  const { t } = useText();
  const board = useBoard();
  const lines = new Map(view.lines.map((line) => [line.id, line.title]));
  const jobs = new Map(view.jobs.map((job) => [job.id, job]));
  return {
    person: (id: string) => board.tables.person.get(id)?.name ?? t('times.somebody'),
    bay: (id: string | null) => board.tables.bay.get(id ?? '')?.name ?? '',
    line: (id: string) => lines.get(id) ?? '',
    job: (id: string) => {
      const job = jobs.get(id);
      return job ? t('times.job', { number: job.number, plate: job.plate }) : '';
    },
  };
};

const Clocks = ({ view, jobId, from }: Props): ReactElement => {
  const { t } = useText();
  const names = useNames(view);
  const stretch = useStretch();
  const put = useCorrectionWords(view);
  const ofJob = jobId === null ? [] : view.lines.filter((line) => line.jobId === jobId);
  return (
    <Part
      heading={t('times.clocks')}
      acts={
        ofJob.length > 0 && (
          <Opener label={t('times.add.clock')} command="addClock">
            {(close) => <AddClockForm lines={ofJob} from={from} onClose={close} />}
          </Opener>
        )
      }
    >
      {view.clocks.length === 0 && <p className="hf-quiet">{t('times.noClocks')}</p>}
      <Entries>
        {view.clocks.map((row) => (
          <Entry
            key={row.id}
            id={`clock-${row.id}`}
            acts={
              <>
                <Opener label={t('times.correct')} command="correctClock" about={names.line(row.lineId)}>
                  {(close) => <CorrectClockForm row={row} lines={view.lines} onClose={close} />}
                </Opener>
                <StrikeOpener
                  entry={{ table: 'clock', id: row.id, version: row.version }}
                  about={names.line(row.lineId)}
                />
              </>
            }
          >
            <span className="hf-entry-title">{names.person(row.personId)}</span>
            <span>{stretch(row)}</span>
            <span className="hf-small hf-quiet">
              {[names.line(row.lineId), ...(jobId === null ? [names.job(row.jobId)] : [])].join(', ')}
              {row.bench && `, ${t('times.bench')}`}
            </span>
            <SmallList lines={put(row.id)} />
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};

const Stays = ({ view, jobId, from }: Props): ReactElement => {
  const { t } = useText();
  const names = useNames(view);
  const stretch = useStretch();
  const put = useCorrectionWords(view);
  return (
    <Part
      heading={t('times.stays')}
      acts={
        jobId !== null && (
          <Opener label={t('times.add.stay')} command="addStay">
            {(close) => <AddStayForm jobId={jobId} from={from} onClose={close} />}
          </Opener>
        )
      }
    >
      {view.stays.length === 0 && <p className="hf-quiet">{t('times.noStays')}</p>}
      <Entries>
        {view.stays.map((row) => {
          const where =
            row.kind === 'bay' ? t('word.place.bay', { bay: names.bay(row.bayId) }) : t(`word.place.${row.kind}`);
          return (
            <Entry
              key={row.id}
              id={`place-${row.id}`}
              acts={
                (row.kind === 'bay' || row.kind === 'yard') && (
                  <Opener label={t('times.correct')} command="correctStay" about={where}>
                    {(close) => <CorrectStayForm row={row} onClose={close} />}
                  </Opener>
                )
              }
            >
              <span className="hf-entry-title">{where}</span>
              <span>{stretch(row)}</span>
              {jobId === null && <span className="hf-small hf-quiet">{names.job(row.jobId)}</span>}
              <SmallList lines={put(row.id)} />
            </Entry>
          );
        })}
      </Entries>
    </Part>
  );
};

const Holds = ({ view, jobId }: Props): ReactElement => {
  const { t } = useText();
  const names = useNames(view);
  const stretch = useStretch();
  const put = useCorrectionWords(view);
  return (
    <Part heading={t('times.holds')}>
      {view.holds.length === 0 && <p className="hf-quiet">{t('times.noHolds')}</p>}
      <Entries>
        {view.holds.map((row) => (
          <Entry
            key={row.id}
            id={`hold-${row.id}`}
            acts={
              <>
                <Opener label={t('times.correct')} command="correctHold" about={t(`reason.${row.reason}`)}>
                  {(close) => <CorrectHoldForm row={row} onClose={close} />}
                </Opener>
                <StrikeOpener
                  entry={{ table: 'hold', id: row.id, version: row.version }}
                  about={t(`reason.${row.reason}`)}
                />
              </>
            }
          >
            <span className="hf-entry-title">{t('times.hold', { reason: t(`reason.${row.reason}`) })}</span>
            <span>{stretch(row)}</span>
            {row.words !== null && <span className="hf-small">{row.words}</span>}
            {jobId === null && <span className="hf-small hf-quiet">{names.job(row.jobId)}</span>}
            <SmallList lines={put(row.id)} />
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};

const Presence = ({ view, from }: Props): ReactElement => {
  const { t } = useText();
  const names = useNames(view);
  const stretch = useStretch();
  const put = useCorrectionWords(view);
  return (
    <Part
      heading={t('times.presence')}
      acts={
        <Opener label={t('times.add.attendance')} command="addAttendance">
          {(close) => <AddAttendanceForm from={from} onClose={close} />}
        </Opener>
      }
    >
      {view.attendance.length === 0 && <p className="hf-quiet">{t('times.noPresence')}</p>}
      <Entries>
        {view.attendance.map((row) => (
          <Entry
            key={row.id}
            id={`attendance-${row.id}`}
            acts={
              <>
                <Opener label={t('times.correct')} command="correctAttendance" about={names.person(row.personId)}>
                  {(close) => <CorrectAttendanceForm row={row} onClose={close} />}
                </Opener>
                <StrikeOpener
                  entry={{ table: 'attendance', id: row.id, version: row.version }}
                  about={names.person(row.personId)}
                />
              </>
            }
          >
            <span className="hf-entry-title">{names.person(row.personId)}</span>
            <span>{`${t(`word.attendance.${row.kind}`)}, ${stretch(row)}`}</span>
            {row.words !== null && <span className="hf-small">{row.words}</span>}
            <SmallList lines={put(row.id)} />
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};

/** Entries that count nowhere any more. */
const Struck = ({ view }: Props): ReactElement | null => {
  const { t } = useText();
  const put = useCorrectionWords(view);
  const struck = view.corrections.filter((one) => one.kind === 'struck');
  if (struck.length === 0) return null;
  return (
    <Part heading={t('times.struck')}>
      <SmallList lines={struck.flatMap((one) => put(one.rowId ?? ''))} />
    </Part>
  );
};

/** Clocks, stays, holds and (over days) presence, each with its correction. */
export const TimesList = (props: Props): ReactElement => (
  <>
    <Clocks {...props} />
    <Stays {...props} />
    <Holds {...props} />
    {props.jobId === null && <Presence {...props} />}
    <Struck {...props} />
  </>
);
