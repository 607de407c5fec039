import { rowsOf, type Board } from '@holdfast/board';
import type { ReactElement } from 'react';

import './flag-lines.css';
import { useText } from '../text/use-text.js';
import { Opener } from './form-sheet.js';
import { useSentences } from './sentences.js';
import { ClearFlagForm } from './small-turn-forms.js';

/** Sentences of the flags on a visit that nobody has cleared; owner and manager say here that they have looked. */
export const FlagLines = ({ board, jobId }: { readonly board: Board; readonly jobId: string }): ReactElement | null => {
  const { t } = useText();
  const sentences = useSentences();
  const flags = rowsOf(board).list('flag', (flag) => flag.jobId === jobId && flag.clearedAt === null);
  if (flags.length === 0) return null;
  return (
    <ul className="hf-flags">
      {flags.map((flag) => {
        const sentence = sentences.flag(flag);
        return (
          <li key={flag.id}>
            <span>{sentence}</span>
            <Opener label={t('flags.clear')} about={sentence} command="clearFlag" look="plain">
              {(close) => <ClearFlagForm flag={flag} sentence={sentence} jobId={jobId} onClose={close} />}
            </Opener>
          </li>
        );
      })}
    </ul>
  );
};
