import type { FiguresView } from '@holdfast/contract';
import { holdReasons } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { Table, type TableColumn } from '../ui/table.js';
import { hours } from './totals-table.js';

type Held = FiguresView['held'];
type Cost = { readonly soleMs: number; readonly sharedMs: number };

const width = 160;
const height = 18;

/** Held alone filled with the hatch of held time, together with others as its bare frame. */
const CostBar = ({ cost, most }: { readonly cost: Cost; readonly most: number }): ReactElement => {
  const scale = most === 0 ? 0 : width / most;
  const [sole, shared] = [cost.soleMs * scale, cost.sharedMs * scale];
  return (
    <svg aria-hidden="true" className="hf-split-bar" width={width} height={height}>
      {sole > 0.5 && <rect className="hf-worked" x={0} y={2} width={sole} height={height - 4} />}
      {shared > 0.5 && (
        <rect className="hf-frame" x={sole + 1} y={3} width={Math.max(0, shared - 2)} height={height - 6} />
      )}
    </svg>
  );
};

const useCostColumns = <R extends Cost>(most: number): readonly TableColumn<R>[] => {
  const text = useText();
  const { t } = text;
  return [
    { key: 'bar', heading: t('bayTime.cost'), cell: (row) => <CostBar cost={row} most={most} /> },
    { key: 'sole', heading: t('bayTime.sole'), align: 'end', cell: ({ soleMs }) => hours(soleMs, text) },
    { key: 'shared', heading: t('bayTime.shared'), align: 'end', cell: ({ sharedMs }) => hours(sharedMs, text) },
  ];
};

const mostOf = (rows: readonly Cost[]): number => Math.max(0, ...rows.map((row) => row.soleMs + row.sharedMs));

/** What each reason, supplier and part held bays for: alone, and while something else held them too. */
export const HeldCost = ({ held }: { readonly held: Held }): ReactElement => {
  const text = useText();
  const { t } = text;
  const reasons = holdReasons.flatMap((reason) => {
    const cost = held.byReason[reason];
    return cost === undefined ? [] : [{ reason, ...cost }];
  });
  reasons.sort((a, b) => b.soleMs + b.sharedMs - (a.soleMs + a.sharedMs));
  const byReason = useCostColumns<(typeof reasons)[number]>(mostOf(reasons));
  const bySupplier = useCostColumns<Held['bySupplier'][number]>(mostOf(held.bySupplier));
  const byPart = useCostColumns<Held['byPart'][number]>(mostOf(held.byPart));
  return (
    <div className="hf-costs">
      <p className="hf-quiet hf-small">{t('bayTime.costMeans')}</p>
      <Table
        caption={t('bayTime.heldBy')}
        rows={reasons}
        rowKey={({ reason }) => reason}
        empty={<p className="hf-quiet">{t('bayTime.noneHeld')}</p>}
        columns={[
          {
            key: 'reason',
            heading: t('bayTime.reason'),
            isRowHeading: true,
            cell: ({ reason }) => (
              <span className="hf-held-reason">
                <ReasonGlyph reason={reason} title={null} size={20} /> {t(`reason.${reason}`)}
              </span>
            ),
          },
          ...byReason,
        ]}
      />
      {held.bySupplier.length > 0 && (
        <Table
          caption={t('bayTime.heldBySupplier')}
          rows={held.bySupplier}
          rowKey={({ supplierId }) => supplierId}
          columns={[
            { key: 'supplier', heading: t('bayTime.supplier'), isRowHeading: true, cell: ({ name }) => name },
            ...bySupplier,
          ]}
        />
      )}
      {held.byPart.length > 0 && (
        <Table
          caption={t('bayTime.heldByPart')}
          rows={held.byPart}
          rowKey={({ partLineId }) => partLineId}
          columns={[
            {
              key: 'part',
              heading: t('bayTime.part'),
              isRowHeading: true,
              cell: ({ description, plate, jobId }) => (
                <>
                  {description},{' '}
                  {jobId === null ? (
                    plate
                  ) : (
                    <Link className="hf-link-whole" href={jobPath(jobId)}>
                      {plate}
                    </Link>
                  )}
                </>
              ),
            },
            ...byPart,
          ]}
        />
      )}
    </div>
  );
};
