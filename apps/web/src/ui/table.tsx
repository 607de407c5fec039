import type { ReactElement, ReactNode } from 'react';

import './table.css';

export type TableColumn<Row> = {
  readonly key: string;
  readonly heading: string;
  readonly cell: (row: Row) => ReactNode;
  /** Numbers and times stand at the end of their column. */
  readonly align?: 'start' | 'end';
  /** The column that names the row for screen readers; exactly one. */
  readonly isRowHeading?: boolean;
};

type TableProps<Row> = {
  readonly caption: string;
  /** Keeps the caption for screen readers where a heading stands right above. */
  readonly captionHidden?: boolean;
  readonly columns: readonly TableColumn<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** Shown in place of the table when there are no rows. */
  readonly empty?: ReactNode;
};

/** A plain table in ink and hairlines; wider than the page it scrolls by itself and can be reached by keyboard. */
export const Table = <Row,>(props: TableProps<Row>): ReactElement => {
  const { caption, columns, rows, rowKey } = props;
  if (rows.length === 0 && props.empty !== undefined) return <>{props.empty}</>;
  return (
    <div className="hf-table-frame" role="region" aria-label={caption} tabIndex={0}>
      <table className="hf-table">
        <caption className={props.captionHidden === true ? 'hf-heard-only' : undefined}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.key} scope="col" data-align={column.align ?? 'start'}>
                {column.heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={rowKey(row)}>
              {columns.map((column) =>
                column.isRowHeading === true ? (
                  <th key={column.key} scope="row" data-align={column.align ?? 'start'}>
                    {column.cell(row)}
                  </th>
                ) : (
                  <td key={column.key} data-align={column.align ?? 'start'}>
                    {column.cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};
