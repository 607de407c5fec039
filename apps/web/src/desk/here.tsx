import type { Visit } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Part } from '../pieces/part.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { DeskRow } from './desk-row.js';

const byKey = (a: Visit, b: Visit): number => {
  const [one, other] = [a.job.keyTag, b.job.keyTag];
  if (one === other) return a.job.number - b.job.number;
  if (one === null) return 1;
  if (other === null) return -1;
  return one.localeCompare(other, undefined, { numeric: true });
};

/** Every vehicle on the premises, by the key that hangs on the board. */
export const Here = ({ visits }: { readonly visits: readonly Visit[] }): ReactElement => {
  const { t } = useText();
  const words = useVisitWords(useBoard(), useNow());
  return (
    <Part heading={t('desk.here')} under={t('desk.hereUnder')}>
      {visits.length === 0 ? (
        <EmptyState heading={t('desk.nobodyHere')}>{t('desk.nobodyHereWords')}</EmptyState>
      ) : (
        <ul className="hf-desk-list hf-desk-here">
          {[...visits].sort(byKey).map((visit) => (
            <DeskRow
              key={visit.job.id}
              of={visit}
              under={[
                visit.customer?.name ?? t('job.internal'),
                ...(visit.job.waitsHere ? [t('desk.waitsHere')] : []),
              ].join(', ')}
            >
              <p className="hf-desk-keyed">
                <span className="hf-code hf-desk-key">
                  <span className="hf-heard-only">{t('desk.key')} </span>
                  {visit.job.keyTag ?? '–'}
                </span>
                <span>{words.place(visit)}</span>
                <span className="hf-small hf-quiet">{words.state(visit)}</span>
              </p>
            </DeskRow>
          ))}
        </ul>
      )}
    </Part>
  );
};
