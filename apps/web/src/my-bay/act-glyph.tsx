import type { ReactElement } from 'react';

import { Mark } from '../ui/marks/mark.js';

// One stroke on a 24 grid, as the reasons are drawn; told apart by silhouette. Each is beside its word.
const drawings = {
  start: 'M6 3.5 20 12 6 20.5Z',
  stop: 'M4.5 4.5h15v15h-15Z',
  done: 'm3.5 12.5 6 6L20.5 5',
  hold: 'M3 3.5h18v17H3ZM3 14 13.5 3.5M3.5 20.5l17-17M10.5 20.5 21 10',
  part: 'M12 2.5 20.2 7.2v9.6L12 21.5 3.8 16.8V7.2ZM12 8.5v7M8.5 12h7',
  fix: 'M3.5 3.5h17v17h-17ZM7.5 7.5l2 2M12 7.5l2 2M7.5 12l2 2M12 12l2 2M16.5 12l0 0M7.5 16.5h2M12 16.5h2',
  check: 'M9 5.5a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13ZM15 5.5a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13Z',
  finding: 'M2.5 8h19v8.5h-19ZM6.5 8v3.5M10.2 8v5M13.9 8v3.5M17.6 8v5',
  photo: 'M3 7.5h4.5L9.5 4.5h5l2 3H21v12H3ZM12 9.8a3.7 3.7 0 1 0 0 7.4 3.7 3.7 0 0 0 0-7.4Z',
  caution: 'M12 3 22 20.5H2ZM12 9.5v5.5M12 17.6v.2',
  rolls:
    'M12 2.8a9.2 9.2 0 1 0 0 18.4 9.2 9.2 0 0 0 0-18.4ZM12 8.8a3.2 3.2 0 1 0 0 6.4 3.2 3.2 0 0 0 0-6.4ZM12 2.8v6M12 15.2v6M2.8 12h6M15.2 12h6',
  line: 'M3 6h18M3 12h9M3 18h9M18 11.5v9M13.5 16h9',
  bay: 'M5 2.5v19M19 2.5v19M2 21.5h6M16 21.5h6M12 4v10.5M8 11l4 4 4-4',
  yard: 'M2.5 21.5v-10h12v10ZM10 8l8.5-5M13 2.8h5.7v5.5',
  roadTest: 'M4 21.5 9 2.5M20 21.5 15 2.5M12 4v3M12 10.5v3.5M12 17.5v4',
  attempt: 'M3 12h4l2.5-7 4.5 14 2.5-7H21',
  cause: 'M10 3.5a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13ZM14.8 14.8 21.5 21.5M10 7v6M7 10h6',
  wheels: 'M3 4.5v15M7 4.5v15M17 4.5v15M21 4.5v15M7 12h10',
  odometer: 'M2.5 7.5h19v9h-19ZM8.8 7.5v9M15.2 7.5v9M5.6 10.5v3M12 10.5v3M18.4 10.5v3',
  ask: 'M3.5 4h17v12H12l-5 4.5V16H3.5ZM12 13.2v.2M10 8.2c.2-1.6 4-1.6 4 .2 0 1.2-2 1.3-2 2.8',
  tag: 'M3.5 12.5 12.5 3.5H20.5V11.5L11.5 20.5ZM17 7.2v.2',
  voltage: 'M13.5 2.5 5.5 13.5h5.5l-1.5 8 8.5-12h-6Z',
  outage: 'M5 2.5v19M19 2.5v19M2 21.5h6M16 21.5h6M8.5 8.5l7 7M15.5 8.5l-7 7',
  another: 'M3 8h15l-4-4.5M21 16H6l4 4.5',
} as const;

export type Act = keyof typeof drawings;

/** The glyph above the word of an act. */
export const ActGlyph = ({ act }: { readonly act: Act }): ReactElement => (
  <Mark title={null} size={30} className="hf-mark-act">
    <path className="hf-line-ink" d={drawings[act]} />
  </Mark>
);
