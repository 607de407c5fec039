import type { JobView } from '@holdfast/contract';
import type { ReactElement, ReactNode } from 'react';

import { useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Entry, SmallList } from './part.js';
import { PhotoList } from './photo-form.js';

export type Finding = JobView['findings'][number];
type Photo = JobView['photos'][number];

/** What was found, in one line: the kind, the measure with its unit, the words. */
export const useFindingWords = (): ((finding: Finding) => string) => {
  const { t, format } = useText();
  return ({ kind, measure, unit, words }) =>
    [
      t(`word.finding.${kind}`),
      ...(measure === null ? [] : [`${format.decimal(measure)}\u00a0${unit ?? ''}`]),
      ...(words === null ? [] : [words]),
    ].join(', ');
};

type FindingEntryProps = {
  readonly finding: Finding;
  /** What was found at the same place before, newest first. */
  readonly earlier: readonly Finding[];
  readonly photos: readonly Photo[];
  readonly acts?: ReactNode;
};

/** A finding with the one before it at the same place beside it. */
export const FindingEntry = ({ finding, earlier, photos, acts }: FindingEntryProps): ReactElement => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const words = useFindingWords();
  const at = (one: Finding): string => format.moment(Date.parse(one.effectiveAt), now);
  return (
    <Entry id={`finding-${finding.id}`} {...(acts === undefined ? {} : { acts })}>
      <p>
        <span className="hf-entry-title">{finding.place}</span> <span className="hf-quiet hf-small">{at(finding)}</span>
      </p>
      <p>{words(finding)}</p>
      <SmallList lines={earlier.map((one) => t('job.earlier', { at: at(one), what: words(one) }))} />
      <PhotoList photos={photos.filter((photo) => photo.findingId === finding.id)} />
    </Entry>
  );
};
