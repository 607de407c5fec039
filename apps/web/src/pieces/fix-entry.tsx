import type { JobView } from '@holdfast/contract';
import type { ReactElement, ReactNode } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Knot, StitchedLine } from '../ui/marks/stitched-line.js';
import { useLimitWords } from './limits-fields.js';
import { Entry, SmallList } from './part.js';

type Fix = JobView['temporaryFixes'][number];

/** A temporary fix with its limits and checks, under its stitched line; ended, the line ends in its knot. */
export const FixEntry = ({ fix, acts }: { readonly fix: Fix; readonly acts?: ReactNode }): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const limitWords = useLimitWords();
  const ended = fix.state === 'ended';
  const at = (iso: string): string => format.moment(Date.parse(iso), now);
  const checks = fix.secondChecks.map((check) => {
    const values = { name: people.get(check.personId)?.name ?? '', at: at(check.effectiveAt) };
    return check.samePerson ? t('job.fixCheckedSelf', values) : t('job.fixChecked', values);
  });
  const lines = [
    [
      t(`word.system.${fix.system}`),
      t('job.fixSince', { since: at(fix.since) }),
      ...(fix.heldWith === null ? [] : [t('job.fixWith', { heldWith: fix.heldWith })]),
      ...(fix.state === 'failed' || fix.state === 'removed' ? [t(`word.fixState.${fix.state}`)] : []),
    ].join(' · '),
    t('job.fixUntil', { limits: limitWords(fix) }),
    t('job.fixEnds', { what: fix.endedByWhat }),
    ...(fix.removedPieceAt === null ? [] : [t('job.fixPiece', { where: fix.removedPieceAt })]),
    ...(checks.length === 0 && !ended ? [t('job.fixUnchecked')] : checks),
    ...(fix.followUpId === null && !ended ? [t('job.fixNoFollowUp')] : []),
    ...(ended && fix.endedAt !== null && fix.endedHow !== null
      ? [t('job.fixEnded', { at: at(fix.endedAt), how: t(`word.fixEnd.${fix.endedHow}`) })]
      : []),
  ];
  return (
    <Entry id={`temporaryFix-${fix.id}`} {...(acts === undefined ? {} : { acts })}>
      {ended ? <Knot title={null} length={120} size={12} /> : <StitchedLine title={null} length={120} size={12} />}
      <p className="hf-entry-title">{fix.place}</p>
      <p className="hf-small">
        {t('job.fixIs', { kind: t(`word.fixKind.${fix.kind}`), standsInFor: fix.standsInFor })}
      </p>
      <SmallList lines={lines} />
    </Entry>
  );
};
