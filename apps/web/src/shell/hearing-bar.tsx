import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { useShell } from './shell-state.js';

/** Nothing while the board is live; a solid bar with the time of what is shown when nothing was heard for 15 s. */
export const HearingBar = (): ReactElement => {
  const { t, format } = useText();
  const { hearing } = useShell();
  return (
    <div role="status">
      {hearing.kind === 'stale' && (
        <p className="hf-hearing-stale">
          <strong>{t('shell.asOf', { time: format.timeToSecond(hearing.heardAt) })}</strong>{' '}
          <span>{t('shell.notLive')}</span>
        </p>
      )}
    </div>
  );
};
