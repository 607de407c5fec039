import { rowsOf, type Board, type Visit } from '@holdfast/board';
import { tierOf } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { SecondCheckForm } from '../pieces/fix-turn-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { useLimitWords } from '../pieces/limits-fields.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { StitchedLine } from '../ui/marks/stitched-line.js';

type FixesProps = { readonly board: Board; readonly visit: Visit };

/** The temporary fixes on this vehicle, with who has looked at them a second time. */
export const Fixes = ({ board, visit }: FixesProps): ReactElement | null => {
  const { t } = useText();
  const limits = useLimitWords();
  const checks = rowsOf(board).list('secondCheck');
  if (visit.fixes.length === 0) return null;
  return (
    <Part heading={t('bay.fixes')} under={<StitchedLine title={null} length={96} />}>
      <Entries>
        {visit.fixes.map((fix) => {
          const people = checks
            .filter((check) => check.temporaryFixId === fix.id)
            .map((check) => board.tables.person.get(check.personId)?.name ?? '');
          const asksCheck = tierOf(fix.system) < 3;
          return (
            <Entry
              key={fix.id}
              id={`temporaryFix-${fix.id}`}
              acts={
                asksCheck && (
                  <Opener label={t('bay.fixCheck')} about={fix.place} command="recordSecondCheck">
                    {(close) => <SecondCheckForm fix={fix} jobId={visit.job.id} onClose={close} />}
                  </Opener>
                )
              }
            >
              <span className="hf-entry-title">
                {t('bay.fix', { kind: t(`word.fixKind.${fix.kind}`), what: fix.standsInFor, place: fix.place })}
              </span>
              <span className="hf-small hf-quiet">
                {[t(`word.system.${fix.system}`), t(`word.fixState.${fix.state}`), limits(fix)]
                  .filter((phrase) => phrase !== '')
                  .join(', ')}
              </span>
              {asksCheck && (
                <span className="hf-small">
                  {people.length === 0 ? t('bay.fixNotChecked') : t('bay.fixChecked', { people: people.join(', ') })}
                </span>
              )}
            </Entry>
          );
        })}
      </Entries>
    </Part>
  );
};
