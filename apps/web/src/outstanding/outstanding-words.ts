import type { Text } from '../text/use-text.js';
import { windowIsEmpty, type OutstandingEntry } from './windows.js';

/** What has to be there first, each as a phrase. */
export const needsWords = (entry: OutstandingEntry, { t, format }: Text): string[] => {
  const { parts, followUp, needsFollowUp } = entry;
  return [
    ...parts.map((part) => {
      const what = part.description;
      if (part.state === 'arrived') return t('outstanding.need.partHere', { what });
      if (part.state === 'wanted') return t('outstanding.need.partWanted', { what });
      return part.dueOn === null
        ? t('outstanding.need.partNoDate', { what })
        : t('outstanding.need.partDue', { what, day: format.day(part.dueOn) });
    }),
    ...(followUp?.needsGoAhead === true ? [t('outstanding.need.goAhead')] : []),
    ...(needsFollowUp === null ? [] : [t('outstanding.need.followUp', { title: needsFollowUp })]),
  ];
};

/** The window as a sentence, for those who do not see the drawing. */
export const windowSentence = (entry: OutstandingEntry, today: string, { t, format }: Text): string => {
  const { opensOn, closesOn } = entry;
  const opens =
    opensOn.kind === 'now'
      ? t('outstanding.opens.now')
      : opensOn.kind === 'day'
        ? t('outstanding.opens.day', { day: format.day(opensOn.day) })
        : t('outstanding.opens.unknown');
  const closes =
    closesOn === null ? t('outstanding.closes.none') : t('outstanding.closes.day', { day: format.day(closesOn) });
  const empty = windowIsEmpty(entry, today)
    ? ` ${t(closesOn !== null && closesOn <= today ? 'outstanding.past' : 'outstanding.empty')}`
    : '';
  return `${opens}; ${closes}.${empty}`;
};
