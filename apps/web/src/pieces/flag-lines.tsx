import { rowsOf, type Board } from '@holdfast/board';
import type { ReactElement } from 'react';

import './flag-lines.css';
import { useSentences } from './sentences.js';

/** Sentences of the flags on a visit that nobody has cleared. */
export const FlagLines = ({ board, jobId }: { readonly board: Board; readonly jobId: string }): ReactElement | null => {
  const sentences = useSentences();
  const flags = rowsOf(board).list('flag', (flag) => flag.jobId === jobId && flag.clearedAt === null);
  if (flags.length === 0) return null;
  return (
    <ul className="hf-flags">
      {flags.map((flag) => (
        <li key={flag.id}>{sentences.flag(flag)}</li>
      ))}
    </ul>
  );
};
