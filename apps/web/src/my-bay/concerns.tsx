import { rowsOf, type Board, type Visit } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useJob } from '../job/use-job.js';
import { SmallList } from '../pieces/part.js';
import { useText, type Text } from '../text/use-text.js';

/** In how many of the tries it appeared, and under which conditions it did. */
const triedWords = (attempts: JobView['attempts'], { t }: Pick<Text, 't'>): string[] => {
  if (attempts.length === 0) return [];
  const shown = attempts.filter((attempt) => attempt.appeared);
  const conditions = [...new Set(shown.map((attempt) => attempt.conditions))];
  return [
    t('bay.tried', { appeared: shown.length, tries: attempts.length }),
    ...conditions.map((words) => t('bay.appearedWhen', { conditions: words })),
  ];
};

const causeWords = (causes: JobView['causes'], { t }: Pick<Text, 't'>): string[] =>
  causes.map(({ certainty, words }) => t('bay.cause', { certainty: t(`word.certainty.${certainty}`), words }));

/** What the customer says, when it appears, what trying showed, and what brings it about. */
export const Concerns = ({ board, visit }: { readonly board: Board; readonly visit: Visit }): ReactElement | null => {
  const text = useText();
  const { t } = text;
  const view = useJob(visit.job.id).data;
  const concerns = rowsOf(board)
    .list('concern', (concern) => concern.jobId === visit.job.id)
    .sort((a, b) => a.position - b.position);
  if (concerns.length === 0) return null;
  const known = view?.job.id === visit.job.id ? view : undefined;
  return (
    <section className="hf-bay-concerns" aria-label={t('bay.concerns')}>
      <h2>{t('bay.concerns')}</h2>
      <ul>
        {concerns.map((concern) => (
          <li key={concern.id} id={`concern-${concern.id}`}>
            {concern.words}
            {concern.conditions !== null && (
              <span className="hf-quiet hf-bay-when">{t('bay.concernWhen', { conditions: concern.conditions })}</span>
            )}
            <SmallList
              lines={[
                ...triedWords(known?.attempts.filter((attempt) => attempt.concernId === concern.id) ?? [], text),
                ...causeWords(known?.causes.filter((cause) => cause.concernIds.includes(concern.id)) ?? [], text),
              ]}
            />
          </li>
        ))}
      </ul>
    </section>
  );
};
