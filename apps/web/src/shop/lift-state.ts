import {
  decisionOn,
  inspectionDue,
  intervalOf,
  isOverdue,
  lastInspection,
  lifts,
  type Row,
  type Rows,
} from '@holdfast/domain';
import { daysBetween } from '@holdfast/shop-calendar';

/** How the lift of a bay stands with its inspections; days are calendar days of the shop's zone. */
export type LiftState =
  /** Nothing there lifts a vehicle. */
  | { readonly kind: 'noLift' }
  | { readonly kind: 'notInspected' }
  | { readonly kind: 'failed'; readonly on: string }
  /** Passed, and the shop follows no interval. */
  | { readonly kind: 'noInterval'; readonly on: string }
  | { readonly kind: 'inDate'; readonly on: string; readonly dueOn: string; readonly daysLeft: number }
  | {
      readonly kind: 'overdue';
      readonly on: string;
      readonly dueOn: string;
      readonly daysOver: number;
      /** The one decision on this inspection; `daysLeft` counts its last day, below one it is over. */
      readonly decision: { readonly untilDay: string; readonly daysLeft: number; readonly words: string } | null;
    };

export const liftState = (rows: Rows, spec: Row<'baySpec'>, today: string): LiftState => {
  if (lifts(spec).length === 0) return { kind: 'noLift' };
  const last = lastInspection(rows, spec);
  if (last === undefined) return { kind: 'notInspected' };
  if (last.outcome === 'failed') return { kind: 'failed', on: last.on };
  const due = inspectionDue(rows, spec);
  if (due === null) return { kind: 'noInterval', on: last.on };
  const { dueOn } = due;
  if (!isOverdue(due, today)) return { kind: 'inDate', on: last.on, dueOn, daysLeft: daysBetween(today, dueOn) };
  const made = decisionOn(rows, spec.bayId, due);
  const decision = made && {
    untilDay: made.untilDay,
    daysLeft: daysBetween(today, made.untilDay) + 1,
    words: made.words,
  };
  return { kind: 'overdue', on: last.on, dueOn, daysOver: daysBetween(dueOn, today), decision: decision ?? null };
};

/** What the next inspection is asked to say first: the interval that was followed until now. */
export const followedInterval = (rows: Rows, spec: Row<'baySpec'>): number | null => intervalOf(rows, spec);

/** Whether somebody has to do something about it: not in order, or not for long. */
export const asksForCare = (state: LiftState): boolean =>
  state.kind === 'failed' ||
  state.kind === 'overdue' ||
  state.kind === 'notInspected' ||
  (state.kind === 'inDate' && state.daysLeft <= 30);
