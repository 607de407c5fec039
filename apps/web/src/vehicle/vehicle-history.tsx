import { calendarOfBoard } from '@holdfast/board';
import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useBoard, useNow } from '../live/use-board.js';
import { type Finding, FindingEntry } from '../pieces/finding-entry.js';
import { StrikeOpener } from '../pieces/strike-form.js';
import { useMay } from '../live/session.js';
import { Opener } from '../pieces/form-sheet.js';
import { OdometerForm } from '../pieces/odometer-form.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { jobPath } from '../screen-paths.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Table } from '../ui/table.js';

type Props = { readonly view: VehicleView };
const nothing = 'empty';

/** By place: the newest finding, and the earlier ones at the same place beside it. */
export const VehicleFindings = ({ view }: Props): ReactElement => {
  const { t } = useText();
  const places = new Map<string, Finding[]>();
  for (const finding of view.findings) places.set(finding.placeKey, [...(places.get(finding.placeKey) ?? []), finding]);
  return (
    <Part heading={t('vehicle.findings')}>
      {places.size === 0 && <p className="hf-quiet">{t('vehicle.noFindings')}</p>}
      <Entries>
        {[...places].flatMap(([key, [newest, ...earlier]]) =>
          newest === undefined
            ? []
            : [<FindingEntry key={key} finding={newest} earlier={earlier} photos={view.photos} />],
        )}
      </Entries>
    </Part>
  );
};

type JobItem = VehicleView['jobs'][number];

/** How far a visit got, in a few words: expected, here, or how it ended. */
const useVisitFacts = (): ((job: JobItem) => string[]) => {
  const { t, format } = useText();
  const now = useNow(60_000);
  return (job) => {
    const lines = t('vehicle.jobLines', { lines: job.lines });
    if (job.endedAt !== null) {
      const how = t(`word.jobEnd.${job.endedHow ?? 'handedBack'}`);
      return [lines, t('vehicle.jobEnded', { how, at: format.date(Date.parse(job.endedAt)) })];
    }
    if (job.arrivedAt === null) {
      const at = job.expectedAt === null ? nothing : format.moment(Date.parse(job.expectedAt), now);
      return [t('vehicle.jobExpected', { at }), lines];
    }
    return [t('vehicle.jobHere'), lines];
  };
};

const JobEntry = ({ view, job }: Props & { readonly job: JobItem }): ReactElement => {
  const { t, format } = useText();
  const facts = useVisitFacts();
  const cameBackFor = view.workDone.find((work) => work.lineId === job.comebackOfLineId);
  const begun = job.checkedInAt ?? job.arrivedAt ?? job.expectedAt;
  return (
    <Entry job={job.number}>
      <p>
        <Link className="hf-vehicle-job" href={jobPath(job.id)}>
          {t('vehicle.jobIs', { number: job.number })}
        </Link>{' '}
        {begun !== null && <span className="hf-quiet">{format.date(Date.parse(begun))}</span>}
      </p>
      <p className="hf-small">
        {[
          ...(job.kind === 'normal' ? [] : [t(`word.job.${job.kind}`)]),
          ...facts(job),
          ...job.openHolds.map((reason) => t('strip.heldFor', { reason: t(`reason.${reason}`) })),
        ].join(' · ')}
      </p>
      {cameBackFor !== undefined && (
        <p className="hf-small">
          {t('vehicle.cameBackFor', { title: cameBackFor.title, number: cameBackFor.jobNumber })}
        </p>
      )}
    </Entry>
  );
};

/** Every visit, newest first; those that are expected too. */
export const VehicleJobs = ({ view }: Props): ReactElement => {
  const { t } = useText();
  return (
    <Part heading={t('vehicle.jobs')}>
      {view.jobs.length === 0 && <p className="hf-quiet">{t('vehicle.noJobs')}</p>}
      <Entries>
        {view.jobs.map((job) => (
          <JobEntry key={job.id} view={view} job={job} />
        ))}
      </Entries>
    </Part>
  );
};

type Done = {
  readonly key: string;
  readonly what: string;
  readonly job: string | null;
  readonly number: number | null;
  readonly endedAt: string | null;
  readonly guaranteeUntil: string | null;
};

/** Lines done and parts fitted, with the last day of the guarantee that the shop gives on them, and what came back. */
export const VehicleWork = ({ view }: Props): ReactElement | null => {
  const { t, format } = useText();
  const today = calendarOfBoard(useBoard()).dateOf(useNow(60_000));
  const cameBack = new Set(view.jobs.map((job) => job.comebackOfLineId));
  const numbers = new Map(view.jobs.map((job) => [job.id, job.number]));
  const rows: Done[] = [
    ...view.workDone.map((work) => ({
      key: work.lineId,
      what: cameBack.has(work.lineId) ? t('vehicle.workCameBack', { title: work.title }) : work.title,
      job: work.jobId,
      number: work.jobNumber,
      endedAt: work.endedAt,
      guaranteeUntil: work.guaranteeUntil,
    })),
    ...view.partsFitted.map((part) => ({
      key: part.partLineId,
      what: t('vehicle.partFitted', { description: part.description, number: part.number ?? nothing }),
      job: part.jobId,
      number: numbers.get(part.jobId ?? '') ?? null,
      endedAt: part.endedAt,
      guaranteeUntil: part.guaranteeUntil,
    })),
  ].sort((a, b) => (b.endedAt ?? '').localeCompare(a.endedAt ?? ''));
  if (rows.length === 0) return null;
  const guarantee = (day: string | null): ReactElement | string => {
    if (day === null) return t('vehicle.noGuarantee');
    return day < today ? t('vehicle.guaranteeOver', { day: format.day(day) }) : <strong>{format.day(day)}</strong>;
  };
  return (
    <Part heading={t('vehicle.workDone')}>
      <Table
        caption={t('vehicle.workDone')}
        captionHidden
        rows={rows}
        rowKey={(row) => row.key}
        columns={[
          { key: 'what', heading: t('vehicle.work'), isRowHeading: true, cell: (row) => row.what },
          {
            key: 'job',
            heading: t('vehicle.workJob'),
            align: 'end',
            cell: (row) =>
              row.job === null || row.number === null ? '–' : <Link href={jobPath(row.job)}>{row.number}</Link>,
          },
          {
            key: 'day',
            heading: t('vehicle.readingDay'),
            cell: (row) => (row.endedAt === null ? '–' : format.date(Date.parse(row.endedAt))),
          },
          { key: 'guarantee', heading: t('vehicle.guaranteeUntil'), cell: (row) => guarantee(row.guaranteeUntil) },
        ]}
      />
    </Part>
  );
};

/** Every reading as it was read, in its own unit, newest first. */
export const VehicleReadings = ({ view, jobId }: Props & { readonly jobId: string | null }): ReactElement => {
  const { t, format } = useText();
  const { distanceUnit } = useShopSettings();
  const may = useMay();
  const last = view.odometerReadings.find((reading) => reading.value !== null);
  const strikes = {
    key: 'strike',
    heading: t('vehicle.readingWrong'),
    cell: ({ id, version, effectiveAt }: VehicleView['odometerReadings'][number]) => (
      <StrikeOpener
        entry={{ table: 'odometerReading', id, version }}
        about={format.dateLong(Date.parse(effectiveAt))}
      />
    ),
  };
  return (
    <Part
      heading={t('vehicle.readings')}
      acts={
        <Opener command="recordOdometer" label={t('vehicle.readIt')}>
          {(close) => (
            <OdometerForm
              vehicleId={view.vehicle.id}
              plate={view.vehicle.plate}
              {...(jobId === null ? {} : { jobId })}
              unit={last?.unit ?? distanceUnit}
              last={last?.value == null ? null : { value: last.value, unit: last.unit }}
              onClose={close}
            />
          )}
        </Opener>
      }
    >
      <Table
        caption={t('vehicle.readings')}
        captionHidden
        rows={[...view.odometerReadings].sort((a, b) => b.effectiveAt.localeCompare(a.effectiveAt))}
        rowKey={(reading) => reading.id}
        empty={<p className="hf-quiet">{t('vehicle.noReadings')}</p>}
        columns={[
          {
            key: 'day',
            heading: t('vehicle.readingDay'),
            isRowHeading: true,
            cell: (reading) => format.dateLong(Date.parse(reading.effectiveAt)),
          },
          {
            key: 'value',
            heading: t('vehicle.reading'),
            align: 'end',
            cell: (reading) => (reading.value === null ? '–' : format.distance(reading.value, reading.unit)),
          },
          {
            key: 'source',
            heading: t('vehicle.readingSource'),
            cell: (reading) =>
              [t(`word.reading.${reading.source}`), ...(reading.doubtful ? [t('vehicle.doubtful')] : [])].join(', '),
          },
          ...(may.command('strikeEntry') ? [strikes] : []),
        ]}
      />
    </Part>
  );
};
