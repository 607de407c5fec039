import type { ProblemDetails } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { bayPath, jobPath, vehiclePath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Notice, type NoticeLine } from '../ui/notice.js';

/** Where the rows live that a refusal offers as the way out: on the page of the job, vehicle or bay it is about. */
export function wayTo(
  way: { readonly table: string; readonly id: string } | null,
  jobId: string | undefined,
): string | null {
  if (!way) return null;
  if (way.table === 'job') return jobPath(way.id);
  if (way.table === 'vehicle') return vehiclePath(way.id);
  if (way.table === 'bay') return bayPath(way.id);
  return jobId ? `${jobPath(jobId)}#${way.table}-${way.id}` : null;
}

interface RefusalProps {
  readonly problem: ProblemDetails | null;
  /** The job at hand: the page on which its lines, holds, fixes and concerns are found. */
  readonly jobId?: string;
  readonly heading?: string;
}

/** All reasons of a refusal at once, each with its way out. Nothing while there is none. */
export function Refusal({ problem, jobId, heading }: RefusalProps): ReactElement | null {
  const { t } = useText();
  if (!problem) return null;
  const lines: NoticeLine[] = (problem.refusals ?? []).map((refusal) => {
    const to = wayTo(refusal.way, jobId);
    return { sentence: refusal.sentence, ...(to ? { way: { to, label: t('live.goThere') } } : {}) };
  });
  const shown = lines.length > 0 ? lines : [{ sentence: problem.detail }];
  return <Notice kind="refusal" lines={shown} {...(heading === undefined ? {} : { heading })} />;
}
