import type { JobView } from '@holdfast/contract';
import type { leavesBy } from '@holdfast/domain';

import type { Blocker } from './blocker.js';

type Leaves = (typeof leavesBy)[number];

/** What a release carries on by itself: it becomes a follow-up, or is said not to have been tried. */
const carriedOn: readonly string[] = [
  'handBack.lineUnfinished',
  'handBack.lineOpen',
  'handBack.partOpen',
  'handBack.fixWithoutFollowUp',
  'handBack.concernOpen',
];

const becomesOutstanding = ({ code, facts }: Blocker): boolean =>
  carriedOn.includes(code) || (code === 'handBack.subletUnderWay' && facts['form'] === 'componentOut');

export type ReleaseList = {
  /** What keeps even a release here. */
  readonly inTheWay: readonly Blocker[];
  /** What will become follow-ups, in words. */
  readonly followUps: readonly string[];
  /** Concerns that will be said not to have been tried. */
  readonly notTried: readonly string[];
};

type Titled = {
  readonly id: string;
  readonly lineId: string | null;
  /** Null where the line's own title says it. */
  readonly title: string | null;
  readonly otherwise: string;
};

/** Parts and components that are somewhere on their way, as a release names what is left of them. */
const loosePieces = (view: JobView): Titled[] => [
  ...view.partLines.map(({ id, lineId, description }) => ({ id, lineId, title: null, otherwise: description })),
  ...view.sublets.map(({ id, lineId, component, firm }) => ({ id, lineId, title: component, otherwise: firm })),
];

/**
 * The title of the follow-up that a reason becomes; null where it becomes none of its own: parts and components of a line
 * that becomes one itself go with it, and parts of one line go together.
 */
const titleOf = (view: JobView, { way }: Blocker, lineIds: ReadonlySet<string>): string | null => {
  const lineTitle = (id: string | null): string | null => view.lines.find((line) => line.id === id)?.title ?? null;
  if (way === null) return null;
  if (way.table === 'workLine') return lineTitle(way.id);
  if (way.table === 'temporaryFix') return view.temporaryFixes.find((fix) => fix.id === way.id)?.endedByWhat ?? null;
  const piece = loosePieces(view).find((one) => one.id === way.id);
  if (piece === undefined || (piece.lineId !== null && lineIds.has(piece.lineId))) return null;
  return piece.title ?? lineTitle(piece.lineId) ?? piece.otherwise;
};

const idsOf = (blockers: readonly Blocker[], table: string): ReadonlySet<string> =>
  new Set(blockers.flatMap(({ way }) => (way?.table === table ? [way.id] : [])));

/** Of the reasons against a hand-back by this door, those that a release minds too, and what becomes of the others. */
export const releaseListOf = (view: JobView, blockers: readonly Blocker[], leaves: Leaves): ReleaseList => {
  const outstanding = blockers.filter(becomesOutstanding);
  const inTheWay = blockers
    .filter((one) => !becomesOutstanding(one))
    .filter(({ code }) => leaves === 'road' || code !== 'handBack.secondCheckMissing');
  const lineIds = idsOf(outstanding, 'workLine');
  const concernIds = idsOf(outstanding, 'concern');
  const titles = outstanding.map((one) => titleOf(view, one, lineIds)).filter((title) => title !== null);
  return {
    inTheWay,
    followUps: [...new Set(titles)],
    notTried: view.concerns.filter(({ id }) => concernIds.has(id)).map(({ words }) => words),
  };
};
