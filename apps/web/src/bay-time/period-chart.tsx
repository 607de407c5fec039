import type { FiguresView } from '@holdfast/contract';
import { useId, type ReactElement } from 'react';

import { StripPatterns, textureIds } from '../strip/strip-patterns.js';
import { useMeasuredWidth } from '../strip/use-measured-width.js';
import { useText, type Text } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Table } from '../ui/table.js';
import type { Range } from './days.js';
import { percent, TextureLegend } from './totals-table.js';

type Period = FiguresView['periods'][number];
type Props = {
  readonly view: FiguresView;
  readonly by: 'day' | 'week' | 'month';
  readonly onPick: (range: Range) => void;
};

const plotHeight = 168;
const axis = 44;
const labelHeight = 22;
const kinds = ['worked', 'held', 'noReason'] as const;

const shareOf = ({ shop }: Period, kind: (typeof kinds)[number]): number => {
  if (shop.availableMs === 0) return 0;
  const ms = { worked: shop.workedMs, held: shop.heldMs, noReason: shop.noReasonMs }[kind];
  return ms / shop.availableMs;
};

const nameOf = ({ first, last }: Period, by: Props['by'], { t, format }: Text): string => {
  if (by === 'month') return format.month(first);
  return first === last ? format.day(first) : t('bayTime.range', { from: format.day(first), to: format.day(last) });
};

/** Every how many-th bar has its label, so that they do not run into each other. */
const labelEvery = (count: number, width: number): number => Math.max(1, Math.ceil((count * 64) / Math.max(1, width)));

const Bars = ({ view, by, onPick, width }: Props & { readonly width: number }): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const textures = textureIds(useId());
  const room = width - axis;
  const slot = room / Math.max(1, view.periods.length);
  const bar = Math.max(2, Math.min(46, slot * 0.72));
  const every = labelEvery(view.periods.length, room);
  const y = (share: number) => 6 + plotHeight * (1 - share);
  return (
    <svg role="img" aria-label={t('bayTime.chart')} width={width} height={plotHeight + labelHeight + 10}>
      <StripPatterns ids={textures} />
      {[0, 0.25, 0.5, 0.75, 1].map((share) => (
        <g key={share}>
          <line className="hf-line-quiet" x1={axis} x2={width} y1={y(share)} y2={y(share)} />
          <text className="hf-svg-small" x={axis - 8} y={y(share) + 4} textAnchor="end">
            {percent(share, text)}
          </text>
        </g>
      ))}
      {view.periods.map((period, at) => {
        const left = axis + at * slot + (slot - bar) / 2;
        let below = 0;
        return (
          <g
            key={period.first}
            className="hf-bar"
            onClick={() => {
              onPick({ from: period.first, to: period.last });
            }}
          >
            <title>{`${nameOf(period, by, text)}: ${percent(period.shop.use, text)}`}</title>
            <rect className="hf-bar-reach" x={axis + at * slot} y={6} width={slot} height={plotHeight} />
            {kinds.map((kind) => {
              const share = shareOf(period, kind);
              const [top, bottom] = [y(below + share), y(below)];
              below += share;
              return bottom - top < 0.5 ? null : (
                <rect
                  key={kind}
                  className={kind === 'worked' ? 'hf-worked' : 'hf-frame'}
                  {...(kind === 'worked'
                    ? {}
                    : { style: { fill: `url(#${kind === 'held' ? textures.hatch : textures.dots})` } })}
                  x={left}
                  y={top}
                  width={bar}
                  height={bottom - top}
                />
              );
            })}
            {at % every === 0 && (
              <text className="hf-svg-small" x={left + bar / 2} y={plotHeight + labelHeight} textAnchor="middle">
                {by === 'month' ? format.month(period.first) : format.dayShort(period.first)}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
};

/** What became of the bays' time, period by period; a period leads to its own account. */
export const PeriodChart = (props: Props): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const [frame, width] = useMeasuredWidth<HTMLDivElement>();
  const hours = (ms: number): string => (ms === 0 ? '–' : format.duration(ms / 60_000));
  return (
    <>
      <div ref={frame} className="hf-chart">
        {width > 0 && <Bars {...props} width={width} />}
      </div>
      <TextureLegend kinds={kinds} />
      <details className="hf-chart-table">
        <summary>{t('bayTime.asTable')}</summary>
        <Table
          caption={t('bayTime.chart')}
          captionHidden
          rows={props.view.periods}
          rowKey={({ first }) => first}
          columns={[
            {
              key: 'period',
              heading: t(`bayTime.by.${props.by}`),
              isRowHeading: true,
              cell: (period) => (
                <Button
                  size="small"
                  look="plain"
                  onPress={() => {
                    props.onPick({ from: period.first, to: period.last });
                  }}
                >
                  {nameOf(period, props.by, text)}
                </Button>
              ),
            },
            {
              key: 'worked',
              heading: t('bayTime.kind.worked'),
              align: 'end',
              cell: ({ shop }) => hours(shop.workedMs),
            },
            { key: 'held', heading: t('bayTime.kind.held'), align: 'end', cell: ({ shop }) => hours(shop.heldMs) },
            {
              key: 'none',
              heading: t('bayTime.kind.noReason'),
              align: 'end',
              cell: ({ shop }) => hours(shop.noReasonMs),
            },
            { key: 'use', heading: t('bayTime.use'), align: 'end', cell: ({ shop }) => percent(shop.use, text) },
            {
              key: 'manned',
              heading: t('bayTime.useManned'),
              align: 'end',
              cell: ({ shop }) => percent(shop.useManned, text),
            },
            {
              key: 'efficiency',
              heading: t('bayTime.efficiency'),
              align: 'end',
              cell: ({ people }) => percent(people.efficiency, text),
            },
          ]}
        />
      </details>
    </>
  );
};
