import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { SentMark, type SentState } from './marks/sent-mark.js';

/** An entry's sent mark with its words. */
export const SentEntry = ({ state }: { readonly state: SentState }): ReactElement => {
  const { t } = useText();
  return (
    <span className="hf-row hf-small">
      <SentMark state={state} title={null} size={18} /> {t(`sent.${state}`)}
    </span>
  );
};
