import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';

/** Beginning and end of a stretch, epoch ms; no end while it runs. */
export type Edges = { readonly from: number | null; readonly to: number | null };

const minuteMs = 60_000;

export const edgesAreRight = ({ from, to }: Edges): boolean => from !== null && (to === null || to > from);

/** The fields show minutes: an edge that was not touched is still the same minute, and is not sent. */
const isSame = (before: string, at: number): boolean =>
  Math.floor(Date.parse(before) / minuteMs) === Math.floor(at / minuteMs);

export const changed = <K extends string>(name: K, before: string, at: number | null): { [P in K]?: string } => {
  const sent: { [P in K]?: string } = {};
  if (at !== null && !isSame(before, at)) sent[name] = new Date(at).toISOString();
  return sent;
};

export const changedEnd = (before: string | null, at: number | null): { toAt?: string | null } => {
  if (at === null) return before === null ? {} : { toAt: null };
  return before !== null && isSame(before, at) ? {} : { toAt: new Date(at).toISOString() };
};

type EdgeProps = {
  readonly edges: Edges;
  readonly onChange: (edges: Edges) => void;
  /** It is still running: its end may be left out. */
  readonly mayRun?: boolean;
};

export const EdgeFields = ({ edges, onChange, mayRun = false }: EdgeProps): ReactElement => {
  const { t } = useText();
  const isBackwards = edges.from !== null && edges.to !== null && edges.to <= edges.from;
  return (
    <>
      <DateTimeField
        label={t('times.from')}
        value={edges.from}
        onChange={(from) => {
          onChange({ ...edges, from });
        }}
        isRequired
      />
      <DateTimeField
        label={t('times.to')}
        value={edges.to}
        onChange={(to) => {
          onChange({ ...edges, to });
        }}
        wrong={isBackwards ? t('times.backwards') : null}
        isRequired={!mayRun}
        {...(mayRun ? { hint: t('times.stillRuns') } : {})}
      />
    </>
  );
};
