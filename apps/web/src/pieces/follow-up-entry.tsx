import type { JobView } from '@holdfast/contract';
import type { ReactElement, ReactNode } from 'react';

import { useText } from '../text/use-text.js';
import { useLimitWords } from './limits-fields.js';
import { Entry, SmallList } from './part.js';

type FollowUp = JobView['followUps'][number];

/** Something outstanding: what, how urgent, before when, what it needs; or how it was closed. */
export const FollowUpEntry = ({
  followUp,
  acts,
}: {
  readonly followUp: FollowUp;
  readonly acts?: ReactNode;
}): ReactElement => {
  const { t, format } = useText();
  const limits = useLimitWords()(followUp);
  const facts = [
    t(`word.followUp.${followUp.kind}`),
    ...(followUp.state === 'open'
      ? [t(`word.urgency.${followUp.urgency}`)]
      : [t(`piece.closeFollowUp.${followUp.state}`)]),
    ...(followUp.remainingMinutes === null
      ? []
      : [t('job.book', { time: format.duration(followUp.remainingMinutes) })]),
    ...(followUp.needsGoAhead ? [t('piece.followUp.needsGoAhead')] : []),
  ];
  const lines = [limits, followUp.words, followUp.closeWords].filter(
    (words): words is string => words !== null && words !== '',
  );
  return (
    <Entry id={`followUp-${followUp.id}`} {...(acts === undefined ? {} : { acts })}>
      <p className="hf-entry-title">{followUp.title}</p>
      <p className="hf-small">{facts.join(' · ')}</p>
      <SmallList lines={lines} />
    </Entry>
  );
};
