import type { JobView, VehicleView } from '@holdfast/contract';
import type { ReactElement, ReactNode } from 'react';

import { useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Entry } from './part.js';
import { PhotoList } from './photo-form.js';

export type Finding = VehicleView['findings'][number];
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
      <p className="hf-entry-title">{finding.place}</p>
      <div className="hf-finding-pair">
        <div>
          <p className="hf-quiet hf-small">{at(finding)}</p>
          <p>{words(finding)}</p>
        </div>
        {earlier.length > 0 && (
          <ul className="hf-finding-before" aria-label={t('job.earlierHere')}>
            {earlier.map((one) => (
              <li key={one.id}>
                <p className="hf-quiet hf-small">{t('job.earlierAt', { at: at(one) })}</p>
                <p className="hf-small">{words(one)}</p>
              </li>
            ))}
          </ul>
        )}
      </div>
      <PhotoList photos={photos.filter((photo) => photo.findingId === finding.id)} />
    </Entry>
  );
};
