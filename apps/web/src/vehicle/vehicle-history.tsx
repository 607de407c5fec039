import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { type Finding, FindingEntry } from '../pieces/finding-entry.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { jobPath } from '../screen-paths.js';
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

/** Every visit, newest first. */
export const VehicleJobs = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  return (
    <Part heading={t('vehicle.jobs')}>
      {view.jobs.length === 0 && <p className="hf-quiet">{t('vehicle.noJobs')}</p>}
      <Entries>
        {view.jobs.map((job) => (
          <Entry key={job.id} job={job.number}>
            <p>
              <Link className="hf-vehicle-job" href={jobPath(job.id)}>
                {t('vehicle.jobIs', { number: job.number })}
              </Link>{' '}
              <span className="hf-quiet">{format.date(Date.parse(job.checkedInAt))}</span>
            </p>
            <p className="hf-small">
              {[
                ...(job.kind === 'normal' ? [] : [t(`word.job.${job.kind}`)]),
                t('vehicle.jobFacts', {
                  lines: job.lines,
                  left: job.endedAt === null ? nothing : format.date(Date.parse(job.endedAt)),
                }),
                ...job.openHolds.map((reason) => t('strip.heldFor', { reason: t(`reason.${reason}`) })),
              ].join(' · ')}
            </p>
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};

/** Every reading as it was read, in its own unit, newest first. */
export const VehicleReadings = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  return (
    <Part heading={t('vehicle.readings')}>
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
        ]}
      />
    </Part>
  );
};
