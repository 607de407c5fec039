import type { ReactElement } from 'react';

import { Mark, type MarkProps } from './mark.js';

/** Where an entry is: only on this device, on its way, in the shop's record, or in need of a person. */
export const sentStates = ['savedHere', 'sending', 'recorded', 'needsYou'] as const;
export type SentState = (typeof sentStates)[number];

const drawings: Readonly<Record<SentState, ReactElement>> = {
  savedHere: <circle className="hf-line-ink" cx="12" cy="12" r="8.5" />,
  sending: (
    <>
      <circle className="hf-line-ink" cx="12" cy="12" r="8.5" />
      <path className="hf-fill-ink" d="M12 3.5a8.5 8.5 0 0 1 0 17Z" />
    </>
  ),
  recorded: <circle className="hf-fill-ink" cx="12" cy="12" r="9.5" />,
  needsYou: (
    <>
      <path className="hf-fill-ink" d="M4 2.5h16v14.5h-5L12 21.5 9 17H4Z" />
      <path
        className="hf-fill-panel"
        d="M10.9 5.2h2.2l-.3 5.6h-1.6ZM12 12.2a1.2 1.2 0 1 1 0 2.4 1.2 1.2 0 0 1 0-2.4Z"
      />
    </>
  ),
};

/** A disc that fills as an entry travels, and a pennant where it needs somebody. */
export const SentMark = ({ state, ...mark }: MarkProps & { readonly state: SentState }): ReactElement => (
  <Mark {...mark} className="hf-mark-sent">
    {drawings[state]}
  </Mark>
);
