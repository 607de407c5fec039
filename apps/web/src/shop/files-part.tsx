import { calendarOfBoard } from '@holdfast/board';
import type { ReadName, TextKey } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { CsvLink } from '../pieces/csv-link.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { pathOf } from '../screen-paths.js';
import { useText } from '../text/use-text.js';

const lists: readonly { readonly path: string; readonly name: TextKey; readonly read: ReadName }[] = [
  { path: '/api/customers', name: 'csv.list.customers', read: 'customers' },
  { path: '/api/vehicles', name: 'csv.list.vehicles', read: 'vehicles' },
  { path: '/api/outstanding', name: 'csv.list.outstanding', read: 'outstanding' },
  { path: '/api/jobs?state=open', name: 'csv.list.jobsOpen', read: 'jobs' },
  { path: '/api/jobs?state=expected', name: 'csv.list.jobsExpected', read: 'jobs' },
  { path: '/api/jobs?state=ended', name: 'csv.list.jobsEnded', read: 'jobs' },
  { path: '/api/part-lines?state=all', name: 'csv.list.partLines', read: 'parts' },
  { path: '/api/orders', name: 'csv.list.orders', read: 'parts' },
];

/** What comes in from files and goes out as files, and the way to the record. */
export const FilesPart = ({ id }: { readonly id: string }): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const today = calendarOfBoard(useBoard()).workingDayOf(useNow(60_000));
  const month = `from=${today.slice(0, 7)}-01&to=${today}`;
  const all = [...lists, { path: `/api/times?${month}`, name: 'csv.list.times' as TextKey, read: 'times' as ReadName }];
  return (
    <Part id={id} heading={t('csv.lists')} under={t('csv.listsUnder')}>
      <Entries>
        {may.read('imports') && (
          <Entry>
            <Link className="hf-entry-title hf-link-whole" href={pathOf.existingData}>
              {t('import.heading')}
            </Link>
            <span className="hf-quiet hf-small">{t('import.under')}</span>
          </Entry>
        )}
        {may.read('changeLog') && (
          <Entry>
            <Link className="hf-entry-title hf-link-whole" href={pathOf.record}>
              {t('record.heading')}
            </Link>
            <span className="hf-quiet hf-small">{t('record.under')}</span>
          </Entry>
        )}
        <Entry>
          <ul className="hf-file-list">
            {all
              .filter(({ read }) => may.read(read))
              .map(({ path, name }) => (
                <li key={path}>
                  <span>{t(name)}</span> <CsvLink path={path} list={t(name)} />
                </li>
              ))}
          </ul>
        </Entry>
      </Entries>
    </Part>
  );
};
