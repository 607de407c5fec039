import { useText, type Text } from '../text/use-text.js';
import type { LiftState } from './lift-state.js';

const wordsOf = (state: LiftState, { t, format }: Text): string[] => {
  switch (state.kind) {
    case 'noLift':
      return [];
    case 'notInspected':
      return [t('shop.lift.notInspected')];
    case 'failed':
      return [t('shop.lift.failed', { day: format.day(state.on) })];
    case 'noInterval':
      return [t('shop.lift.noInterval', { day: format.day(state.on) })];
    case 'inDate':
      return [t('shop.lift.inDate', { day: format.day(state.on), due: format.day(state.dueOn), days: state.daysLeft })];
    case 'overdue': {
      const overdue = t('shop.lift.overdue', { due: format.day(state.dueOn), days: state.daysOver });
      const { decision } = state;
      if (decision === null) return [overdue, t('shop.lift.notUsed')];
      const { untilDay, daysLeft, words } = decision;
      const day = format.day(untilDay);
      return [
        overdue,
        daysLeft > 0 ? t('shop.lift.usedUntil', { day, days: daysLeft, words }) : t('shop.lift.wasUsedUntil', { day }),
      ];
    }
  }
};

/** How the lift stands with its inspections, in sentences; none where nothing lifts. */
export const useLiftWords = (): ((state: LiftState) => string[]) => {
  const text = useText();
  return (state) => wordsOf(state, text);
};
