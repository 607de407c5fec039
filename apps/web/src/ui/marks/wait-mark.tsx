import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

/** Within the reason's own limit, or past it. */
export type Waiting = 'within' | 'past';

/** Somebody waits: an outline while within the limit, solid with a cut corner past it. The only blue there is. */
export const WaitMark = ({ waiting, ...mark }: MarkProps & { readonly waiting: Waiting }): ReactElement => (
  <Mark {...mark} className="hf-mark-wait">
    {waiting === 'within' ? (
      <rect className="hf-line-wait" x="3.25" y="5.25" width="17.5" height="13.5" />
    ) : (
      <path className="hf-fill-wait" d="M2 4h14l6 6v10H2Z" />
    )}
  </Mark>
);
