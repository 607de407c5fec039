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

const withWords = (...words: readonly (string | null)[]): string => words.filter((one) => one !== null).join(': ');

/** Concern – cause – correction, and what was done or found besides. */
export const SheetConcerns = ({ content }: Props): ReactElement => {
  const { t } = useText();
  const found = useFound();
  const { concerns, otherWork, otherFindings } = content;
  const triples = concerns.map((concern) => [
    [t('sheet.reported'), withWords(concern.words, concern.conditions)],
    [t('sheet.found'), concern.causes.length === 0 ? t('sheet.nothingFound') : concern.causes.map(found).join('; ')],
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
