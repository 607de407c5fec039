import type { SheetContent } from '@holdfast/domain';
import { Fragment, type ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { SheetSection } from './sheet-section.js';

type SheetFinding = SheetContent['otherFindings'][number];
type Props = { readonly content: SheetContent };

const useFound = (): ((finding: SheetFinding) => string) => {
  const { t, format } = useText();
  return ({ place, kind, measure, unit, words }) =>
    [
      place,
      ...(words === null ? [t(`word.finding.${kind}`)] : []),
      ...(measure === null ? [] : [`${format.decimal(measure)}\u00a0${unit ?? ''}`]),
      ...(words === null ? [] : [words]),
    ].join(', ');
};

type SheetConcern = SheetContent['concerns'][number];

/** How often it was tried to make it appear, how often it did, and under which conditions. */
const useTried = (): ((concern: SheetConcern) => string[]) => {
  const { t } = useText();
  return ({ attempts }) => {
    if (attempts.length === 0) return [];
    const shown = attempts.filter((attempt) => attempt.appeared);
    const conditions = [...new Set(shown.map((attempt) => attempt.conditions))].join('; ');
    const tried = t('sheet.triedTimes', { appeared: shown.length, tries: attempts.length });
    return [conditions === '' ? tried : withWords(tried, conditions)];
  };
};

/** Causes with how sure they are, then what was found about it. */
const useFoundAbout = (): ((concern: SheetConcern) => string) => {
  const { t } = useText();
  const found = useFound();
  return ({ knownCauses, causes }) => {
    const all = [
      ...knownCauses.map(({ words, certainty }) => `${words} (${t(`word.certainty.${certainty}`)})`),
      ...causes.map(found),
    ];
    return all.length === 0 ? t('sheet.nothingFound') : all.join('; ');
  };
};

const withWords = (...words: readonly (string | null)[]): string => words.filter((one) => one !== null).join(': ');

/** Concern – cause – correction, and what was done or found besides. */
export const SheetConcerns = ({ content }: Props): ReactElement => {
  const { t } = useText();
  const found = useFound();
  const tried = useTried();
  const foundAbout = useFoundAbout();
  const { concerns, otherWork, otherFindings } = content;
  const triples = concerns.map((concern) => [
    [t('sheet.reported'), withWords(concern.words, concern.conditions)],
    ...tried(concern).map((words) => [t('sheet.tried'), words]),
    [t('sheet.found'), foundAbout(concern)],
    [
      t('sheet.done'),
      concern.corrections.length === 0
        ? t('sheet.nothingDone')
        : concern.corrections.map((work) => withWords(work.title, work.words)).join('; '),
    ],
    ...(concern.outcome === null
      ? []
      : [
          [
            t('sheet.outcome'),
            withWords(t(`word.outcome.${concern.outcome}`), concern.outcomeConditions, concern.outcomeWords),
          ],
        ]),
  ]);
  return (
    <>
      <SheetSection heading={t('sheet.concerns')}>
        <div>
          {triples.map((triple, at) => (
            <dl key={concerns[at]?.words} className="hf-sheet-triple">
              {triple.map(([name, words]) => (
                <Fragment key={name}>
                  <dt>{name}</dt>
                  <dd>{words}</dd>
                </Fragment>
              ))}
            </dl>
          ))}
        </div>
      </SheetSection>
      {otherWork.length > 0 && (
        <SheetSection heading={t('sheet.otherWork')}>
          <ul>
            {otherWork.map((work) => (
              <li key={work.title}>{withWords(work.title, work.words)}</li>
            ))}
          </ul>
        </SheetSection>
      )}
      {otherFindings.length > 0 && (
        <SheetSection heading={t('sheet.otherFindings')}>
          <ul>
            {otherFindings.map((finding, at) => (
              <li key={`${String(at)} ${finding.place}`}>{found(finding)}</li>
            ))}
          </ul>
        </SheetSection>
      )}
    </>
  );
};
