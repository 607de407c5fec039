// outstanding/ hides how fixes and follow-ups of all vehicles become one list by the day of their first limit. It
// guarantees that what must be there first and what it must be done before stand on one time axis for all of them, so that
// a window in which nothing fits is seen.
import type { OutstandingItem, PartLinesPage } from '@holdfast/contract';
import { addDays, daysBetween, type LocalDate } from '@holdfast/shop-calendar';

type PartItem = PartLinesPage['items'][number];
type FollowUpRow = Extract<OutstandingItem, { kind: 'followUp' }>['row'];
type FixRow = Extract<OutstandingItem, { kind: 'temporaryFix' }>['row'];

/** What has to be there first: nothing (open since today), by a day, or something without a day. */
export type OpensOn =
  { readonly kind: 'now' } | { readonly kind: 'day'; readonly day: LocalDate } | { readonly kind: 'unknown' };

/** One line of the list: a temporary fix with the follow-up that ends it, or a follow-up on its own. */
export type OutstandingEntry = {
  readonly key: string;
  readonly item: OutstandingItem;
  readonly fix: FixRow | null;
  readonly followUp: FollowUpRow | null;
  /** The fix has its follow-up, but on a page that was not read yet. */
  readonly isFurtherDown: boolean;
  /** Part lines that the permanent repair needs and that are not on the vehicle yet. */
  readonly parts: readonly PartItem[];
  /** The follow-up that has to be done before this one, by its title. */
  readonly needsFollowUp: string | null;
  readonly opensOn: OpensOn;
  /** The first day on which a limit is reached; null: none has a day. */
  readonly closesOn: LocalDate | null;
};

const later = (a: OpensOn, b: OpensOn): OpensOn => {
  if (a.kind === 'unknown' || b.kind === 'unknown') return { kind: 'unknown' };
  if (a.kind === 'now') return b;
  if (b.kind === 'now') return a;
  return a.day > b.day ? a : b;
};

const partOpens = (part: PartItem): OpensOn => {
  if (part.state === 'arrived' || part.state === 'fitted') return { kind: 'now' };
  return part.dueOn === null ? { kind: 'unknown' } : { kind: 'day', day: part.dueOn };
};

const opensOn = (followUp: FollowUpRow | null, parts: readonly PartItem[]): OpensOn => {
  const waits = followUp !== null && (followUp.needsGoAhead || followUp.needsFollowUpId !== null);
  return parts.map(partOpens).reduce(later, waits ? { kind: 'unknown' } : { kind: 'now' });
};

const earlier = (a: LocalDate | null, b: LocalDate | null): LocalDate | null => {
  if (a === null || b === null) return a ?? b;
  return a < b ? a : b;
};

/** Parts of the follow-up itself, and those of the line that the permanent repair is or that the fix was made with. */
const isCarriedBy = (part: PartItem, fix: FixRow | null, followUp: FollowUpRow | null): boolean => {
  if (followUp !== null && part.followUpId === followUp.id) return true;
  return part.lineId !== null && [fix?.lineId, followUp?.lineId].includes(part.lineId);
};

/** Puts each follow-up to the fix that it ends, in the order of the list: the first limit of either counts. */
export const entriesOf = (items: readonly OutstandingItem[], parts: readonly PartItem[]): OutstandingEntry[] => {
  const followUps = new Map(items.flatMap((item) => (item.kind === 'followUp' ? [[item.row.id, item] as const] : [])));
  const taken = new Set<string>();
  const entries: OutstandingEntry[] = [];
  const entry = (
    item: OutstandingItem,
    fix: FixRow | null,
    followUp: FollowUpRow | null,
    other: OutstandingItem | null,
  ): void => {
    const carried = parts.filter((part) => isCarriedBy(part, fix, followUp));
    entries.push({
      key: item.row.id,
      item,
      fix,
      followUp,
      isFurtherDown: followUp === null && fix !== null && fix.followUpId !== null,
      parts: carried,
      needsFollowUp:
        followUp?.needsFollowUpId == null ? null : (followUps.get(followUp.needsFollowUpId)?.row.title ?? ''),
      opensOn: opensOn(followUp, carried),
      closesOn: earlier(item.firstLimit?.day ?? null, other?.firstLimit?.day ?? null),
    });
  };
  for (const item of items) {
    if (item.kind !== 'temporaryFix') continue;
    const own = item.row.followUpId === null ? undefined : followUps.get(item.row.followUpId);
    if (own) taken.add(own.row.id);
    entry(item, item.row, own?.row ?? null, own ?? null);
  }
  for (const item of followUps.values()) if (!taken.has(item.row.id)) entry(item, null, item.row, null);
  return entries.sort((a, b) =>
    (a.closesOn ?? '9') < (b.closesOn ?? '9') ? -1 : (a.closesOn ?? '9') > (b.closesOn ?? '9') ? 1 : 0,
  );
};

/** Whether nothing fits: what it needs comes after its first limit, or the limit is past. */
export const windowIsEmpty = ({ opensOn: opens, closesOn }: OutstandingEntry, today: LocalDate): boolean =>
  closesOn !== null && (closesOn <= today || (opens.kind === 'day' && opens.day >= closesOn));

const leastDays = 56;
const mostDays = 182;
const pastDays = 14;

/** The axis for all windows: two weeks back, on to the last limit, at least eight weeks and at most half a year ahead. */
export const axisOf = (
  entries: readonly OutstandingEntry[],
  today: LocalDate,
): { readonly from: LocalDate; readonly to: LocalDate } => {
  const ahead = entries.flatMap(({ closesOn }) => (closesOn === null ? [] : [daysBetween(today, closesOn)]));
  const days = Math.min(mostDays, Math.max(leastDays, ...ahead.map((one) => one + 7)));
  return { from: addDays(today, -pastDays), to: addDays(today, days) };
};

/** Days after its limit (or after it was told, where no day is named) at which a vehicle that did not come is let go. */
const retorqueLapsesAfterDays = 30;

/**
 * A re-torque for which the vehicle never dropped in: nobody ends it by hand, after thirty days it reads as told, not
 * returned. `toldOn` and `today` are days of the shop. How far it has been driven meanwhile nobody here knows.
 */
export const isToldNotReturned = (entry: OutstandingEntry, toldOn: LocalDate, today: LocalDate): boolean =>
  entry.followUp?.kind === 'retorque' && addDays(entry.closesOn ?? toldOn, retorqueLapsesAfterDays) < today;
