import type { JobView } from '@holdfast/contract';
import { lineEnded } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { type Section, sectionId, sections } from './job-parties.js';

/** How many rows each part has, and how many of them still ask for something; null: no count is told. */
const countsOf = (view: JobView): Record<Section, { readonly all: number; readonly open: number } | null> => {
  const of = <R,>(rows: readonly R[], isOpen: (row: R) => boolean) => ({
    all: rows.length,
    open: rows.filter(isOpen).length,
  });
  return {
    cautions: of(view.cautions, (caution) => caution.endedAt === null),
    concerns: of(view.concerns, (concern) => concern.outcome === null),
    lines: of(view.lines, (line) => !lineEnded(line)),
    parts: of(view.partLines, (part) => part.state !== 'fitted' && part.state !== 'cancelled'),
    holds: of(view.holds, (hold) => hold.toAt === null),
    questions: of(view.questions, (question) => question.answeredAt === null),
    fixes: of(view.temporaryFixes, (fix) => fix.state !== 'ended'),
    wheels: of(view.wheels, (wheel) => wheel.torquedAt === null),
    sublets: of(view.sublets, (sublet) => sublet.state === 'arranged' || sublet.state === 'underWay'),
    findings: of(view.findings, () => false),
    followUps: of(view.followUps, (followUp) => followUp.state === 'open'),
    contact: of(
      [...view.calls.map((call) => call.endedAt === null), ...view.contactEntries.map(() => false)],
      (isOpen) => isOpen,
    ),
    sheets: of(view.sheets, () => false),
    log: null,
  };
};

/** Parts that are drawn only once they have something. */
const onlyFilled: readonly Section[] = ['questions', 'wheels', 'sublets', 'contact', 'sheets'];

const heading = {
  cautions: 'job.cautions',
  concerns: 'job.concerns',
  lines: 'job.lines',
  parts: 'job.parts',
  holds: 'job.holds',
  questions: 'job.questions',
  fixes: 'job.fixes',
  wheels: 'job.wheels',
  sublets: 'job.sublets',
  findings: 'job.findings',
  followUps: 'job.followUps',
  contact: 'job.contacts',
  sheets: 'job.sheets',
  log: 'job.log',
} as const;

/** The parts of the page, each with how many rows of it are still open: a way to each, beside the page at a desk. */
export const JobIndex = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const counts = countsOf(view);
  const shown = sections.filter((section) => !onlyFilled.includes(section) || (counts[section]?.all ?? 0) > 0);
  return (
    <nav className="hf-job-index" aria-label={t('job.index')}>
      <ul>
        {shown.map((section) => {
          const count = counts[section];
          return (
            <li key={section}>
              <a href={`#${sectionId(section)}`}>
                <span>{t(heading[section])}</span>
                {count !== null && count.all > 0 && (
                  <span className="hf-figures hf-quiet">
                    {count.open > 0 ? t('job.indexOpen', { open: count.open, all: count.all }) : count.all}
                  </span>
                )}
              </a>
            </li>
          );
        })}
      </ul>
    </nav>
  );
};
