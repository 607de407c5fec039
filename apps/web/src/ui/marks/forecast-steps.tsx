import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

/** Heights of the steps that end at 50, 80 and 95 of 100. */
const stepHeights = [30, 20, 10] as const;

/** Open steps from `from` to the three ends, standing on `base`, each lower than the one before. */
export const ForecastShape = (props: {
  from: number;
  ends: readonly [half: number, eight: number, last: number];
  base: number;
  scale?: number;
}): ReactElement => {
  const { from, ends, base, scale = 1 } = props;
  const steps = stepHeights.map((height, at) => ({
    left: at === 0 ? from : Math.max(from, ends[at - 1] ?? from),
    right: Math.max(from, ends[at] ?? from),
    height: height * scale,
  }));
  return (
    <g className="hf-forecast">
      {steps.map(({ left, right, height }) => (
        <path
          key={height}
          className="hf-step"
          d={`M${left.toFixed(1)} ${String(base)}v${String(-height)}H${right.toFixed(1)}V${String(base)}Z`}
        />
      ))}
    </g>
  );
};

export const ForecastSteps = (mark: MarkProps): ReactElement => (
  <Mark {...mark} className="hf-mark-forecast" grid={[48, 24]}>
    <ForecastShape from={2} ends={[22, 35, 46]} base={22} scale={0.64} />
  </Mark>
);
