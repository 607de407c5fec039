import { dayNumberOf, type LocalDate } from '@holdfast/shop-calendar';
import { scaleLinear } from 'd3-scale';
import type { ReactElement } from 'react';

import '../strip/strip.css';
import { useText } from '../text/use-text.js';
import { StitchedShape } from '../ui/marks/stitched-line.js';
import { windowIsEmpty, type OutstandingEntry } from './windows.js';

export type Axis = { readonly from: LocalDate; readonly to: LocalDate; readonly today: LocalDate };

export type DayScale = (day: LocalDate) => number;

/** Days of the axis to CSS pixels, clamped to the drawing. */
export const dayScale = ({ from, to }: Axis, width: number): DayScale => {
  const scale = scaleLinear([dayNumberOf(from), dayNumberOf(to)], [0, width]).clamp(true);
  return (day) => scale(dayNumberOf(day));
};

const monthStarts = ({ from, to }: Axis): LocalDate[] => {
  const starts: LocalDate[] = [];
  for (let year = Number(from.slice(0, 4)), month = Number(from.slice(5, 7)); ; month += 1) {
    if (month > 12) [year, month] = [year + 1, 1];
    const first = `${String(year)}-${String(month).padStart(2, '0')}-01`;
    if (first > to) return starts;
    if (first > from) starts.push(first);
  }
};

const todayRoom = 70;

/** The months over all windows, with today. */
export const WindowAxis = ({ axis, width }: { readonly axis: Axis; readonly width: number }): ReactElement | null => {
  const { t, locale } = useText();
  if (width === 0) return null;
  const scale = dayScale(axis, width);
  const month = new Intl.DateTimeFormat(locale, { month: 'short', timeZone: 'UTC' });
  const today = scale(axis.today);
  return (
    <svg className="hf-time-axis" width={width} height={30} viewBox={`0 0 ${String(width)} 30`} aria-hidden="true">
      <path className="hf-axis-line" d={`M0 29.5H${String(width)}`} />
      {monthStarts(axis).map((first) => {
        const x = scale(first);
        return (
          <g key={first}>
            <path className="hf-axis-line" d={`M${x.toFixed(1)} 21V30`} />
            {Math.abs(x - today) > todayRoom && x < width - 30 && (
              <text x={x + 4} y={16}>
                {month.format(new Date(`${first}T00:00:00Z`))}
              </text>
            )}
          </g>
        );
      })}
      <path className="hf-now" d={`M${today.toFixed(1)} 20V30`} />
      <text className="hf-axis-now" x={today} y={16} textAnchor="middle">
        {t('outstanding.today')}
      </text>
    </svg>
  );
};

const height = 44;
const top = 5;
const bottom = 27;
const stitchedY = 36;

/** A bracket: `[` opens a window, `]` closes it. */
const bracket = (x: number, side: 'open' | 'close'): string => {
  const lip = side === 'open' ? 6 : -6;
  return `M${(x + lip).toFixed(1)} ${String(top)}h${String(-lip)}V${String(bottom)}h${String(lip)}`;
};

type DrawingProps = {
  readonly entry: OutstandingEntry;
  readonly axis: Axis;
  readonly width: number;
  readonly sentence: string;
  /** Since when the fix is on, a day of the shop's zone; null for a follow-up alone. */
  readonly since: LocalDate | null;
};

type Edges = {
  readonly today: number;
  readonly opens: number | null;
  readonly closes: number | null;
  readonly right: number;
};

/** From when it can be done until it must be, in CSS pixels. */
const edgesOf = ({ opensOn, closesOn }: OutstandingEntry, scale: DayScale, axis: Axis, right: number): Edges => {
  const today = scale(axis.today);
  const closes = closesOn === null ? null : scale(closesOn);
  if (opensOn.kind === 'unknown') return { today, opens: null, closes, right };
  return { today, opens: opensOn.kind === 'day' ? Math.max(today, scale(opensOn.day)) : today, closes, right };
};

/** Room between the brackets; a broken line where nobody knows from when; a cross where no day fits. */
const Room = ({
  edges: { today, opens, closes, right },
  isEmpty,
}: {
  readonly edges: Edges;
  readonly isEmpty: boolean;
}): ReactElement => {
  if (isEmpty && closes !== null) {
    const cross = `M${(closes - 12).toFixed(1)} ${String(top + 3)}l-14 16M${(closes - 26).toFixed(1)} ${String(top + 3)}l14 16`;
    return <path className="hf-window-bracket" d={cross} />;
  }
  const end = closes ?? right;
  if (opens === null) return <path className="hf-window-unknown" d={`M${today.toFixed(1)} 16H${end.toFixed(1)}`} />;
  return (
    <rect
      className="hf-window-room"
      x={opens}
      y={top + 5}
      width={Math.max(0, end - opens)}
      height={bottom - top - 10}
    />
  );
};

/** One window: from when it can be done until it must be; the stitched line runs under it as long as the fix is on. */
export const WindowDrawing = ({ entry, axis, width, sentence, since }: DrawingProps): ReactElement | null => {
  if (width === 0) return null;
  const scale = dayScale(axis, width);
  const edges = edgesOf(entry, scale, axis, width);
  const { today, opens, closes } = edges;
  return (
    <svg
      className="hf-window"
      role="img"
      aria-label={sentence}
      width={width}
      height={height}
      viewBox={`0 0 ${String(width)} ${String(height)}`}
    >
      <path className="hf-now" d={`M${today.toFixed(1)} 0V${String(height)}`} />
      <Room edges={edges} isEmpty={windowIsEmpty(entry, axis.today)} />
      {entry.opensOn.kind === 'day' && opens !== null && (
        <path className="hf-window-bracket" d={bracket(opens, 'open')} />
      )}
      {closes !== null && <path className="hf-window-bracket" d={bracket(closes, 'close')} />}
      {since !== null && <StitchedShape from={scale(since)} to={width} y={stitchedY} ended={false} />}
    </svg>
  );
};
