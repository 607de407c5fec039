import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

/** The stitched square: how many temporary fixes are on the vehicle. Counts above 9 read "9+". */
export const Patch = ({ count, ...mark }: MarkProps & { readonly count: number }): ReactElement => (
  <Mark {...mark} size={mark.size ?? 28} className="hf-mark-patch" grid={[28, 28]}>
    <rect className="hf-fill-stitch" x="1" y="1" width="26" height="26" rx="2" />
    <rect className="hf-patch-seam" x="4" y="4" width="20" height="20" />
    <text className="hf-patch-count" x="14" y="18.7" textAnchor="middle">
      {count > 9 ? '9+' : count}
    </text>
  </Mark>
);
