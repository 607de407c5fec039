import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

const triangle = 'M12 2.6 22.6 21.4H1.4Z';

export type CautionKind = 'caution' | 'highVoltage';

/** The black triangle: a caution, or with the flash high voltage. In ink, never a hue. */
export const CautionMark = ({ kind, ...mark }: MarkProps & { readonly kind: CautionKind }): ReactElement => (
  <Mark {...mark} className="hf-mark-caution">
    <path className="hf-fill-ink" strokeLinejoin="round" d={triangle} />
    {kind === 'highVoltage' ? (
      <path className="hf-fill-panel" d="M13.6 7.4 8.3 14.3h3.2l-1.5 5.4 5.7-7.2h-3.3Z" />
    ) : (
      <path
        className="hf-fill-panel"
        d="M10.8 9h2.4l-.4 6.6h-1.6ZM12 17.1a1.25 1.25 0 1 1 0 2.5 1.25 1.25 0 0 1 0-2.5Z"
      />
    )}
  </Mark>
);
