import type { ReactElement } from 'react';

import { ProblemAnswer } from '../live/http.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';

/** In place of a screen whose read is not here: still fetching, not found, or out of reach. */
export const ReadState = ({
  error,
  missing,
}: {
  readonly error: Error | null;
  readonly missing: string;
}): ReactElement => {
  const { t } = useText();
  if (error === null) return <p className="hf-quiet">{t('shell.loading')}</p>;
  if (error instanceof ProblemAnswer) {
    return <EmptyState heading={error.problem.status === 404 ? missing : error.problem.detail} />;
  }
  return <EmptyState heading={t('live.unreachable')} />;
};
