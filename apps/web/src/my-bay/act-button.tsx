import { rowsOf, type Board, type Visit } from '@holdfast/board';
import type { TextKey } from '@holdfast/contract';
import type { CommandName, Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { Opener } from '../pieces/form-sheet.js';
import type { Named } from '../pieces/line-form.js';
import { openLines } from '../pieces/visit-lists.js';
import { useText } from '../text/use-text.js';
import { ActGlyph, type Act } from './act-glyph.js';

export type ActsProps = {
  readonly board: Board;
  readonly visit: Visit;
  readonly now: number;
  /** The clock the person is on, where it runs on this vehicle. */
  readonly clock: Row<'clock'> | undefined;
  /** The person is on some clock. */
  readonly isClocked: boolean;
  readonly homeBayId: string | undefined;
};

type ActButtonProps = {
  readonly act: Act;
  readonly text: TextKey;
  readonly command: CommandName;
  readonly look?: 'ink';
  readonly children: (close: () => void) => ReactElement;
};

/** One large button that opens the form of its act; there only for those who may. */
export const ActButton = ({ act, text, command, look, children }: ActButtonProps): ReactElement => {
  const { t } = useText();
  return (
    <Opener
      size="act"
      label={t(text)}
      command={command}
      mark={<ActGlyph act={act} />}
      {...(look === undefined ? {} : { look })}
    >
      {children}
    </Opener>
  );
};

/** What forms about this vehicle offer to choose from. */
export const namedOf = ({ board, visit }: Pick<ActsProps, 'board' | 'visit'>) => {
  const concernRows = rowsOf(board)
    .list('concern', (concern) => concern.jobId === visit.job.id)
    .sort((a, b) => a.position - b.position);
  const concerns: Named[] = concernRows.map(({ id, words }) => ({ id, title: words }));
  const followUps: Named[] = visit.followUps.map(({ id, title }) => ({ id, title }));
  return { concernRows, concerns, lines: openLines(visit), followUps };
};
