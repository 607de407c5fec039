import { useId, type ReactElement } from 'react';

import { ForecastShape } from '../ui/marks/forecast-steps.js';
import { PromiseShape } from '../ui/marks/promise-flag.js';
import { StitchedShape } from '../ui/marks/stitched-line.js';
import { StripBlock } from './strip-block.js';
import { bodyBottom, rowHeight, stitchedY } from './strip-geometry.js';
import type { StripData } from './strip-model.js';
import { StripPatterns, textureIds } from './strip-patterns.js';
import { stripScale, type StripScale } from './strip-scale.js';

type Drawing = StripData & { readonly width: number; readonly sentence: string };

// Two blocks that meet keep a hair of ground between them, so that they read as two.
const boxOf = (span: { from: number; to: number }, scale: StripScale): { left: number; right: number } => {
  const left = scale(span.from);
  return { left: left + 0.5, right: Math.max(left + 0.5, scale(span.to) - 0.5) };
};

const overlaps = (span: { from: number; to: number }, data: StripData): boolean =>
  span.to > data.from && span.from < data.to;

/** The strip itself, drawn for exactly `width` CSS pixels (never stretched). */
export const StripDrawing = (props: Drawing): ReactElement => {
  const { width, sentence, now, from, to, forecast, promise } = props;
  const textures = textureIds(useId());
  const scale = stripScale(props, width);
  const nowInside = now > from && now < to;
  return (
    <svg
      className="hf-strip-drawing"
      role="img"
      aria-label={sentence}
      width={width}
      height={rowHeight}
      viewBox={`0 0 ${String(width)} ${String(rowHeight)}`}
    >
      <StripPatterns ids={textures} />
      {nowInside && <path className="hf-now" d={`M${scale(now).toFixed(1)} 0V${String(rowHeight)}`} />}
      {props.segments
        .filter((segment) => overlaps(segment, props))
        .map((segment) => (
          <StripBlock key={segment.from} segment={segment} box={boxOf(segment, scale)} textures={textures} />
        ))}
      {forecast != null && forecast.p95 > now && (
        <ForecastShape
          from={scale(now) + 1}
          ends={[scale(forecast.p50), scale(forecast.p80), scale(forecast.p95)]}
          base={bodyBottom - 1}
        />
      )}
      {props.stitched
        .filter((span) => overlaps({ from: span.from, to: span.to ?? to }, props))
        .map((span) => (
          <StitchedShape
            key={span.from}
            from={scale(span.from)}
            to={scale(span.to ?? to)}
            y={stitchedY}
            ended={span.ended && span.to !== null && span.to <= to}
          />
        ))}
      {promise != null && promise >= from && promise <= to && (
        <PromiseShape x={Math.min(Math.max(8, scale(promise)), width - 8)} top={1} bottom={bodyBottom} />
      )}
    </svg>
  );
};
