import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { offsetAt } from '../text/zoned-input.js';
import { axisTicks, stripScale } from './strip-scale.js';

type AxisProps = { readonly from: number; readonly to: number; readonly now: number; readonly width: number };

const nowRoom = 62;

/** The hours over all strips, of the shop's zone, with the time that is now at its fixed place. */
export const TimeAxis = ({ from, to, now, width }: AxisProps): ReactElement | null => {
  const { t, format, zone } = useText();
  if (width === 0) return null;
  const scale = stripScale({ from, to, now }, width);
  const nowInside = now > from && now < to;
  const at = scale(now);
  const ticks = axisTicks({ from, to }, width, offsetAt(from, zone) / 60_000);
  return (
    <svg className="hf-time-axis" width={width} height={30} viewBox={`0 0 ${String(width)} 30`} aria-hidden="true">
      <path className="hf-axis-line" d={`M0 29.5H${String(width)}`} />
      {ticks.map((tick) => {
        const x = scale(tick);
        const covered = nowInside && Math.abs(x - at) < nowRoom;
        const anchor = x < 24 ? 'start' : x > width - 24 ? 'end' : 'middle';
        return (
          <g key={tick}>
            <path className="hf-axis-line" d={`M${x.toFixed(1)} 23V30`} />
            {!covered && (
              <text x={x} y={16} textAnchor={anchor}>
                {format.time(tick)}
              </text>
            )}
          </g>
        );
      })}
      {nowInside && (
        <>
          <path className="hf-now" d={`M${at.toFixed(1)} 20V30`} />
          <text className="hf-axis-now" x={at} y={16} textAnchor="middle">
            {t('strip.nowAt', { time: format.time(now) })}
          </text>
        </>
      )}
    </svg>
  );
};
