import type { JobView } from '@holdfast/contract';

import type { JobCause, JobConcern, JobLine } from './job-parties.js';

/** A line, or lines that are ways to the same end, of which at most one is given. */
export type LineItem =
  | { readonly kind: 'line'; readonly line: JobLine }
  | { readonly kind: 'choice'; readonly id: string; readonly lines: readonly JobLine[] };

export type LineGroup = {
  readonly key: string;
  readonly cause: JobCause | null;
  /** The concerns that the cause explains, or the one that the lines are about; none: other work. */
  readonly concerns: readonly JobConcern[];
  readonly items: readonly LineItem[];
};

type Told = Pick<JobView, 'lines' | 'causes' | 'concerns'>;

const other = 'other';

/** Groups in the order of the concerns: first what mends a cause of theirs, then what is about the concern alone. */
const heads = ({ causes, concerns }: Told): Omit<LineGroup, 'items'>[] => {
  const headed = new Map<string, Omit<LineGroup, 'items'>>();
  const add = (key: string, cause: JobCause | null, of: readonly JobConcern[]): void => {
    if (!headed.has(key)) headed.set(key, { key, cause, concerns: of });
  };
  const explained = (cause: JobCause) => concerns.filter((concern) => cause.concernIds.includes(concern.id));
  for (const concern of concerns) {
    for (const cause of causes.filter((one) => one.concernIds.includes(concern.id)))
      add(`cause ${cause.id}`, cause, explained(cause));
    add(`concern ${concern.id}`, null, [concern]);
  }
  for (const cause of causes) add(`cause ${cause.id}`, cause, explained(cause));
  add(other, null, []);
  return [...headed.values()];
};

/** The lines under their cause or concern. A choice stays whole where the first of its lines with either of them stands. */
export const lineGroups = (told: Told): LineGroup[] => {
  const groups = heads(told);
  const keys = new Set(groups.map((group) => group.key));
  const keyOf = (line: JobLine): string =>
    [`cause ${line.causeId ?? ''}`, `concern ${line.concernId ?? ''}`].find((key) => keys.has(key)) ?? other;
  const items = new Map<string, LineItem[]>();
  const put = (key: string, item: LineItem): void => {
    items.set(key, [...(items.get(key) ?? []), item]);
  };
  const seen = new Set<string>();
  for (const line of told.lines) {
    const { choiceId } = line;
    const ways = choiceId === null ? [] : told.lines.filter((one) => one.choiceId === choiceId);
    if (choiceId === null || ways.length < 2) {
      put(keyOf(line), { kind: 'line', line });
    } else if (!seen.has(choiceId)) {
      seen.add(choiceId);
      put(ways.map(keyOf).find((key) => key !== other) ?? other, { kind: 'choice', id: choiceId, lines: ways });
    }
  }
  return groups.flatMap((group) => {
    const own = items.get(group.key);
    return own === undefined ? [] : [{ ...group, items: own }];
  });
};
