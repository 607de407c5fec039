import type { FiguresView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { vehiclePath } from '../screen-paths.js';
import { useText, type Text } from '../text/use-text.js';
import { Table } from '../ui/table.js';
import { Figure } from './figure.js';
import { hours } from './totals-table.js';

type Flow = FiguresView['flow'];
const spent = ['worked', 'us', 'parts', 'customer', 'others'] as const;
const width = 220;

const SpentBar = ({ ms, most }: { readonly ms: number; readonly most: number }): ReactElement => (
  <svg aria-hidden="true" className="hf-split-bar" width={width} height={18}>
    <rect className="hf-worked" x={0} y={2} width={most === 0 ? 0 : (ms / most) * width} height={14} />
  </svg>
);

const oneDecimal = (value: number | null, { format }: Pick<Text, 'format'>): string =>
  value === null ? '–' : format.number(Math.round(value * 10) / 10);

/** The vehicles and fleets that were here longest. */
const OffTheRoad = ({ flow }: { readonly flow: Flow }): ReactElement => {
  const text = useText();
  const { t, format } = text;
  return (
    <>
      <Table
        caption={t('bayTime.offRoad')}
        rows={flow.vehicles}
        rowKey={({ vehicleId }) => vehicleId}
        empty={<p className="hf-quiet">{t('bayTime.noVehicles')}</p>}
        columns={[
          {
            key: 'vehicle',
            heading: t('bayTime.vehicle'),
            isRowHeading: true,
            cell: ({ vehicleId, plate, description }) => (
              <>
                <Link className="hf-link-whole" href={vehiclePath(vehicleId)}>
                  {plate}
                </Link>{' '}
                {description}
              </>
            ),
          },
          { key: 'days', heading: t('bayTime.days'), align: 'end', cell: ({ days }) => oneDecimal(days, text) },
        ]}
      />
      {flow.fleets.length > 0 && (
        <Table
          caption={t('bayTime.fleets')}
          rows={flow.fleets}
          rowKey={({ fleet }) => fleet}
          columns={[
            { key: 'fleet', heading: t('bayTime.fleet'), isRowHeading: true, cell: ({ fleet }) => fleet },
            {
              key: 'vehicles',
              heading: t('bayTime.vehicles'),
              align: 'end',
              cell: ({ vehicles }) => format.number(vehicles),
            },
            { key: 'days', heading: t('bayTime.days'), align: 'end', cell: ({ days }) => oneDecimal(days, text) },
          ]}
        />
      )}
    </>
  );
};

/** Vehicles through the shop: how many, how long, and what their opening time here went into. */
export const FlowPart = ({ flow }: { readonly flow: Flow }): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const rows = spent.map((kind) => ({ kind, ms: flow.timeMs[kind] }));
  const most = Math.max(...rows.map(({ ms }) => ms));
  return (
    <>
      <dl className="hf-figure-row">
        <Figure
          name={t('bayTime.here')}
          value={oneDecimal(flow.meanHere, text)}
          under={t('bayTime.hereMost', { most: flow.mostHere })}
        />
        <Figure
          name={t('bayTime.left')}
          value={format.number(flow.left)}
          under={t('bayTime.leftPerDay', { count: oneDecimal(flow.leftPerDay, text) })}
        />
        <Figure
          name={t('bayTime.comebacks')}
          value={oneDecimal(flow.comebacksPerHundred, text)}
          under={t('bayTime.comebacksMeans', { count: flow.comebacks })}
        />
      </dl>
      <Table
        caption={t('bayTime.spent')}
        rows={rows}
        rowKey={({ kind }) => kind}
        columns={[
          {
            key: 'kind',
            heading: t('bayTime.spentOn'),
            isRowHeading: true,
            cell: ({ kind }) => t(`bayTime.spent.${kind}`),
          },
          { key: 'bar', heading: t('bayTime.share'), cell: ({ ms }) => <SpentBar ms={ms} most={most} /> },
          { key: 'hours', heading: t('bayTime.hours'), align: 'end', cell: ({ ms }) => hours(ms, text) },
        ]}
      />
      <OffTheRoad flow={flow} />
      {flow.littleHolds === false && <p className="hf-quiet hf-small">{t('bayTime.littleFails')}</p>}
    </>
  );
};
