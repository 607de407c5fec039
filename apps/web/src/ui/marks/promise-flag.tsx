import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

/** An open flag on a dotted staff: the tip of the staff is the promised time. */
export const PromiseShape = (props: { x: number; top: number; bottom: number }): ReactElement => {
  const { x, top, bottom } = props;
  return (
    <g className="hf-promise">
      <path className="hf-dotted" d={`M${x.toFixed(1)} ${String(top + 10)}V${String(bottom)}`} />
      <path
        className="hf-flag"
        d={`M${(x - 6.5).toFixed(1)} ${String(top + 1)}h13L${x.toFixed(1)} ${String(top + 11)}Z`}
      />
    </g>
  );
};

export const PromiseFlag = (mark: MarkProps): ReactElement => (
  <Mark {...mark} className="hf-mark-promise">
    <PromiseShape x={12} top={2} bottom={23} />
  </Mark>
);
