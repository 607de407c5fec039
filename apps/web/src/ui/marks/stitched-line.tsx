import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

const stitchEvery = 9;

// Slanted stitches over one thread: a sewn seam, not a dashed frame (which means planned).
const stitches = (from: number, to: number, y: number): string => {
  const count = Math.max(0, Math.floor((to - from - 2) / stitchEvery));
  return Array.from({ length: count }, (_, at) => {
    const x = from + 5 + at * stitchEvery;
    return `M${x.toFixed(1)} ${String(y + 4)}l3.5-8`;
  }).join('');
};

/** The stitched line from one x to another along y; where the fix was repaired for good it ends in its knot. */
export const StitchedShape = (props: { from: number; to: number; y: number; ended: boolean }): ReactElement => {
  const { from, to, y, ended } = props;
  const end = ended ? Math.max(from, to - 10) : to;
  return (
    <g className="hf-stitched">
      <path className="hf-thread" d={`M${from.toFixed(1)} ${String(y)}H${end.toFixed(1)}`} />
      <path className="hf-stitches" d={stitches(from, end, y)} />
      {ended && <KnotShape x={end + 5} y={y} />}
    </g>
  );
};

/** A knot centred at x, y: the thread turned once around itself. */
export const KnotShape = (props: { x: number; y: number }): ReactElement => (
  <path
    className="hf-knot"
    transform={`translate(${props.x.toFixed(1)} ${props.y.toFixed(1)})`}
    d="M-5 0C-1-6 5-6 5 0S-1 6-5 0M-1.5 4.5 3.5-4.5"
  />
);

/** A length of stitched line: a temporary fix is on this vehicle. */
export const StitchedLine = (props: MarkProps & { readonly length?: number }): ReactElement => {
  const length = props.length ?? 72;
  return (
    <Mark title={props.title} size={props.size ?? 14} className="hf-mark-stitched" grid={[length, 14]}>
      <StitchedShape from={0} to={length} y={7} ended={false} />
    </Mark>
  );
};

/** The stitched line that ends: repaired for good. */
export const Knot = (props: MarkProps & { readonly length?: number }): ReactElement => {
  const length = props.length ?? 72;
  return (
    <Mark title={props.title} size={props.size ?? 14} className="hf-mark-knot" grid={[length, 14]}>
      <StitchedShape from={0} to={length - 2} y={7} ended />
    </Mark>
  );
};
