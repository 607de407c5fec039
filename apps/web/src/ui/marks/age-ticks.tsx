import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

/** Age of a wait in working time: 1 below an hour, 2 below four hours, 3 below one working day, 4 longer. */
export type AgeTickCount = 1 | 2 | 3 | 4;

/** Ticks standing side by side, starting at x and standing on y. */
export const AgeTicksShape = (props: { count: AgeTickCount; x: number; y: number }): ReactElement => (
  <g className="hf-age-ticks">
    {[0, 1, 2, 3].slice(0, props.count).map((at) => (
      <rect key={at} className="hf-fill-ink" x={props.x + at * 5} y={props.y - 9} width="2.5" height="9" />
    ))}
  </g>
);

export const AgeTicks = ({ count, ...mark }: MarkProps & { readonly count: AgeTickCount }): ReactElement => (
  <Mark {...mark} className="hf-mark-age" grid={[20, 12]} size={mark.size ?? 12}>
    <AgeTicksShape count={count} x={1} y={11} />
  </Mark>
);
