import { fieldsOfImport, type ImportRowsPage, type ImportRowView, type ImportView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { usePages } from '../live/use-pages.js';
import { Part } from '../pieces/part.js';
import { useText, type Text } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Table, type TableColumn } from '../ui/table.js';

/** What a word of a closed list is called here; other values are as they are. */
const shown = (field: string, value: string | number | null | undefined, { t }: Text): string => {
  if (value === null || value === undefined) return '';
  const text = String(value);
  switch (field) {
    case 'vehicleKind':
      return t(`word.vehicle.${text as 'light'}`);
    case 'drive':
      return t(`word.drive.${text as 'none'}`);
    case 'followUpKind':
      return t(`word.followUp.${text as 'service'}`);
    case 'urgency':
      return t(`word.urgency.${text as 'soon'}`);
    default:
      return text;
  }
};

/** The first good rows of the file as they would be. */
export const PreviewPart = ({ view }: { readonly view: ImportView }): ReactElement | null => {
  const text = useText();
  const { t } = text;
  const rows = view.preview.filter(({ made }) => made !== null);
  const fields = fieldsOfImport[view.batch.kind].filter((field) => rows.some(({ made }) => made?.[field] != null));
  const columns: TableColumn<ImportRowView>[] = [
    { key: 'number', heading: t('import.row'), cell: ({ number }) => number, align: 'end', isRowHeading: true },
    ...fields.map((field): TableColumn<ImportRowView> => ({
      key: field,
      heading: t(`import.field.${field}`),
      cell: ({ made }) => shown(field, made?.[field], text),
    })),
  ];
  if (rows.length === 0) return null;
  return (
    <Part heading={t('import.preview')}>
      <Table
        caption={t('import.preview')}
        captionHidden
        columns={columns}
        rows={rows}
        rowKey={({ number }) => String(number)}
      />
    </Part>
  );
};

type BadLine = {
  readonly key: string;
  readonly number: number;
  readonly column: string;
  readonly value: string;
  readonly sentence: string;
};

const linesOf = ({ number, problems }: ImportRowView): BadLine[] =>
  problems.map(({ column, value, sentence, code }, at) => ({
    key: `${String(number)} ${String(at)} ${code}`,
    number,
    column: column ?? '',
    value: value ?? '',
    sentence,
  }));

type BadRowsProps = {
  readonly importId: string;
  readonly count: number;
  /** The good ones were taken over. */
  readonly done: boolean;
};

/** Every row that is left out with its reasons, and all of them as a file. */
export const BadRowsPart = ({ importId, count, done }: BadRowsProps): ReactElement => {
  const { t } = useText();
  const heading = t(done ? 'import.badRowsDone' : 'import.badRows');
  const path = `/api/imports/${importId}/rows?state=bad`;
  const read = usePages<ImportRowsPage>(`${path}&limit=50`, ['imports']);
  const columns: TableColumn<BadLine>[] = [
    { key: 'row', heading: t('import.row'), cell: ({ number }) => number, align: 'end', isRowHeading: true },
    { key: 'column', heading: t('import.column'), cell: ({ column }) => column },
    { key: 'value', heading: t('import.value'), cell: ({ value }) => value },
    { key: 'why', heading: t('import.why'), cell: ({ sentence }) => sentence },
  ];
  return (
    <Part
      heading={heading}
      under={count === 0 ? undefined : t('import.badRowsUnder')}
      acts={
        count > 0 && (
          <a href={`${path}&format=csv`} download>
            {t('import.badCsv')}
          </a>
        )
      }
    >
      {count === 0 ? (
        <p className="hf-quiet">{t('import.badNone')}</p>
      ) : (
        <Table
          caption={heading}
          captionHidden
          columns={columns}
          rows={read.pages.flatMap(({ items }) => items.flatMap(linesOf))}
          rowKey={({ key }) => key}
        />
      )}
      {read.more !== null && (
        <div className="hf-row">
          <Button size="small" onPress={read.more}>
            {t('import.more')}
          </Button>
        </div>
      )}
    </Part>
  );
};
