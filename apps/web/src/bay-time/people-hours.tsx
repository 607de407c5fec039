import type { FiguresView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Table } from '../ui/table.js';
import { hours, percent } from './totals-table.js';

type People = FiguresView['people'];
type Row = { readonly key: string; readonly name: string; readonly hours: People['all'] };

/** Hours present and clocked against the book hours of what was finished: all together, and whoever may be shown. */
export const PeopleHours = ({ people }: { readonly people: People }): ReactElement => {
  const text = useText();
  const { t } = text;
  const rows: Row[] = [
    { key: 'all', name: t('bayTime.everybody'), hours: people.all },
    ...people.people.map(({ personId, name, hours: own }) => ({ key: personId, name, hours: own })),
  ];
  return (
    <>
      <Table
        caption={t('bayTime.people')}
        captionHidden
        rows={rows}
        rowKey={({ key }) => key}
        columns={[
          { key: 'name', heading: t('bayTime.who'), isRowHeading: true, cell: ({ name }) => name },
          {
            key: 'present',
            heading: t('bayTime.present'),
            align: 'end',
            cell: ({ hours: own }) => hours(own.presentMs, text),
          },
          {
            key: 'clocked',
            heading: t('bayTime.clocked'),
            align: 'end',
            cell: ({ hours: own }) => hours(own.clockedMs, text),
          },
          { key: 'book', heading: t('bayTime.book'), align: 'end', cell: ({ hours: own }) => hours(own.bookMs, text) },
          {
            key: 'efficiency',
            heading: t('bayTime.efficiency'),
            align: 'end',
            cell: ({ hours: own }) => percent(own.efficiency, text),
          },
          {
            key: 'productivity',
            heading: t('bayTime.productivity'),
            align: 'end',
            cell: ({ hours: own }) => percent(own.productivity, text),
          },
        ]}
      />
      <p className="hf-quiet hf-small">{t('bayTime.peopleMeans')}</p>
    </>
  );
};
