import type { SheetContent } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { limitPhrases } from '../pieces/limits-fields.js';
import { SmallList } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { StitchedLine } from '../ui/marks/stitched-line.js';
import { SheetSection } from './sheet-section.js';

type SheetFix = SheetContent['temporary'][number];
type Props = { readonly content: SheetContent };

const Fix = ({ fix }: { readonly fix: SheetFix }): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const at = (iso: string): string => format.date(Date.parse(iso));
  const limits = limitPhrases(fix, fix.season, text).join(t('piece.limit.or'));
  const lines = [
    [t(`word.system.${fix.system}`), t('job.fixSince', { since: at(fix.since) })].join(' · '),
    ...(fix.heldWith === null ? [] : [t('job.fixWith', { heldWith: fix.heldWith })]),
    ...(limits === '' ? [] : [t('sheet.fixUntil', { limits })]),
    t('job.fixEnds', { what: fix.endedByWhat }),
    ...(fix.removedPieceAt === null ? [] : [t('job.fixPiece', { where: fix.removedPieceAt })]),
    ...fix.secondChecks.map((check) =>
      t(check.samePerson ? 'sheet.fixCheckedSelf' : 'sheet.fixChecked', { name: check.by, at: at(check.at) }),
    ),
    ...(fix.byRoad === null
      ? []
      : [
          t('sheet.fixByRoad', {
            name: fix.byRoad.allowedBy,
            words: fix.byRoad.words,
            signed: String(fix.byRoad.receiverSigned),
          }),
        ]),
  ];
  return (
    <li>
      <strong>
        {t('sheet.fix', { place: fix.place, kind: t(`word.fixKind.${fix.kind}`), standsInFor: fix.standsInFor })}
      </strong>
      <SmallList lines={lines} />
    </li>
  );
};

/** What is temporary, until when, and what ends it. */
export const SheetTemporary = ({ content }: Props): ReactElement | null => {
  const { t } = useText();
  if (content.temporary.length === 0) return null;
  return (
    <SheetSection heading={t('sheet.temporary')}>
      <StitchedLine title={null} length={216} size={14} />
      <p className="hf-small">{t('sheet.temporaryUnder')}</p>
      <ul>
        {content.temporary.map((fix, at) => (
          <Fix key={`${String(at)} ${fix.place}`} fix={fix} />
        ))}
      </ul>
    </SheetSection>
  );
};

/** When to come back, and for what. */
export const SheetComeBack = ({ content }: Props): ReactElement | null => {
  const text = useText();
  const { t } = text;
  if (content.followUps.length === 0) return null;
  return (
    <SheetSection heading={t('sheet.comeBack')}>
      <ul>
        {content.followUps.map((one, at) => {
          const phrases = limitPhrases(one, one.season, text);
          const limits = phrases.length === 0 ? t(`word.urgency.${one.urgency}`) : phrases.join(t('piece.limit.or'));
          return (
            <li key={`${String(at)} ${one.title}`}>
              {t('sheet.comeBackLimits', { title: one.title, limits })}
              {one.words !== null && <span className="hf-small hf-quiet">{` ${one.words}`}</span>}
            </li>
          );
        })}
      </ul>
    </SheetSection>
  );
};
