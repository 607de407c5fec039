import { addDays, daysBetween, firstOfMonth, type LocalDate, mondayOf } from '@holdfast/shop-calendar';

/** Days of the shop's zone, both included. */
export type Range = { readonly from: LocalDate; readonly to: LocalDate };
export const spans = ['day', 'week', 'month'] as const;
export type Span = (typeof spans)[number];

const lastOfMonth = (day: LocalDate): LocalDate => addDays(firstOfMonth(addDays(firstOfMonth(day), 31)), -1);

/** The day, or the week (from Monday) or month that it lies in. */
export const rangeOf = (span: Span, day: LocalDate): Range => {
  switch (span) {
    case 'day':
      return { from: day, to: day };
    case 'week':
      return { from: mondayOf(day), to: addDays(mondayOf(day), 6) };
    case 'month':
      return { from: firstOfMonth(day), to: lastOfMonth(day) };
  }
};

/** Which of the spans the range is; null: a range of its own. */
export const spanOf = ({ from, to }: Range): Span | null =>
  spans.find((span) => {
    const whole = rangeOf(span, from);
    return whole.from === from && whole.to === to;
  }) ?? null;

/** The next range of the same kind, or the one before: a month after a month, else as many days. */
export const step = (range: Range, by: 1 | -1): Range => {
  if (spanOf(range) === 'month') return rangeOf('month', by > 0 ? addDays(range.to, 1) : addDays(range.from, -1));
  const days = (daysBetween(range.from, range.to) + 1) * by;
  return { from: addDays(range.from, days), to: addDays(range.to, days) };
};
