import type { ReactElement } from 'react';

import { StripDrawing } from '../strip/strip-drawing.js';
import { segmentKinds, type StripSegment } from '../strip/strip-model.js';
import { segmentWords } from '../strip/strip-words.js';
import { useText } from '../text/use-text.js';
import { MeaningList } from './meaning-list.js';

const sampleWidth = 132;

// A minute of a strip whose now lies elsewhere, so that the sample is the texture alone.
const window = { from: 0, to: 60_000, now: -60_000 };

/** A length of every kind of time, and of the two that may be past their limit. */
export const TextureMeanings = (): ReactElement => {
  const words = useText();
  const { t } = words;
  const plain = segmentKinds.map((kind): StripSegment => ({ from: 0, to: 60_000, kind }));
  const waiting = (['within', 'past'] as const).map((state): StripSegment => ({
    from: 0,
    to: 60_000,
    kind: 'held',
    reason: 'parts',
    waiting: state,
  }));
  return (
    <MeaningList
      meanings={[...plain, ...waiting].map((segment) => {
        const wait = segment.waiting === undefined ? null : t(`wait.${segment.waiting}`);
        const said = [segmentWords(segment, words), wait].filter((part) => part !== null).join('; ');
        return {
          key: `${segment.kind} ${segment.waiting ?? ''}`,
          mark: <StripDrawing {...window} segments={[segment]} stitched={[]} width={sampleWidth} sentence={said} />,
          words: said,
        };
      })}
    />
  );
};
