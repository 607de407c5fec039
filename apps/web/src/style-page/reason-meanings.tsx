import type { ReactElement } from 'react';

import { holdReasons } from '@holdfast/domain';

import { useText } from '../text/use-text.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { SentMark, sentStates } from '../ui/marks/sent-mark.js';
import { MeaningList } from './meaning-list.js';

/** All hold reasons, glyph and word. */
export const ReasonMeanings = (): ReactElement => {
  const { t } = useText();
  return (
    <MeaningList
      dense
      meanings={holdReasons.map((reason) => ({
        key: reason,
        mark: <ReasonGlyph reason={reason} title={null} size={28} />,
        words: t(`reason.${reason}`),
      }))}
    />
  );
};

/** The four states of an entry in the outbox. */
export const SentMeanings = (): ReactElement => {
  const { t } = useText();
  return (
    <MeaningList
      dense
      meanings={sentStates.map((state) => ({
        key: state,
        mark: <SentMark state={state} title={null} size={28} />,
        words: t(`sent.${state}`),
      }))}
    />
  );
};
