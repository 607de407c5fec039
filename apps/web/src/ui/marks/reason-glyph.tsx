import type { ReactElement } from 'react';

import type { HoldReason } from '@holdfast/domain';

import { Mark, type MarkProps } from './mark.js';

// One stroke, one weight, on a 24 grid; told apart by silhouette: nut, speech, frame with a way out, sheet, spanner,
// two posts, shoulders, hourglass, thermometer, loupe, key, three dots.
const drawings: Readonly<Record<HoldReason, string>> = {
  parts: 'M12 2.5 20.2 7.2v9.6L12 21.5 3.8 16.8V7.2ZM12 8.4a3.6 3.6 0 1 0 0 7.2 3.6 3.6 0 0 0 0-7.2Z',
  goAhead: 'M3 4.5h18v11.5H11L6.5 20.5V16H3Z',
  sublet: 'M10.5 5H3v16h16v-7.5M10.5 13.5 21 3M14 2.8h7.2V10',
  information: 'M5 2.8h9.5L19 7.3v13.9H5ZM14.2 2.8v4.8H19M8.4 12h7.2M8.4 16.4h4.6',
  tool: 'M20.6 6.2 17 9.8l-2.8-2.8 3.6-3.6a5.6 5.6 0 0 0-7.3 7.2L3.2 18a2 2 0 0 0 2.8 2.8l7.4-7.3a5.6 5.6 0 0 0 7.2-7.3Z',
  bay: 'M5 2.5v19M19 2.5v19M2 21.5h6M16 21.5h6M5 11.5h5M19 11.5h-5',
  technician: 'M12 3a4.3 4.3 0 1 0 0 8.6A4.3 4.3 0 0 0 12 3ZM3.5 21.2c.4-4.6 3.8-7 8.5-7s8.1 2.4 8.5 7Z',
  setting:
    'M5 2.8h14M5 21.2h14M7 2.8c0 4.8 3.2 6.6 5 9.2 1.8-2.6 5-4.4 5-9.2M7 21.2c0-4.8 3.2-6.6 5-9.2 1.8 2.6 5 4.4 5 9.2',
  conditions: 'M9.6 13.7V5a2.4 2.4 0 0 1 4.8 0v8.7a4.6 4.6 0 1 1-4.8 0ZM12 9v8M17.5 5.5H21M17.5 9.5h2.3',
  assessor: 'M10 3a7 7 0 1 0 0 14 7 7 0 0 0 0-14ZM15.2 15.2 21.3 21.3',
  collection: 'M7.5 10.5a5 5 0 1 0 0 10 5 5 0 0 0 0-10ZM11 12 21 2.5M17 6.3l3.4 3.4M13.7 9.4l2.4 2.4',
  other: 'M4 12h.01M12 12h.01M20 12h.01',
};

/** A glyph of 24 × 24 with its top left corner at x, y. */
export const ReasonShape = (props: { reason: HoldReason; x?: number; y?: number; scale?: number }): ReactElement => (
  <path
    className={props.reason === 'other' ? 'hf-line-ink hf-dots' : 'hf-line-ink'}
    transform={`translate(${String(props.x ?? 0)} ${String(props.y ?? 0)}) scale(${String(props.scale ?? 1)})`}
    d={drawings[props.reason]}
  />
);

export const ReasonGlyph = ({ reason, ...mark }: MarkProps & { readonly reason: HoldReason }): ReactElement => (
  <Mark {...mark} className="hf-mark-reason">
    <ReasonShape reason={reason} />
  </Mark>
);
