import type { LocalDate } from '@holdfast/shop-calendar';
import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { type Range, rangeOf, spanOf, spans, step } from './days.js';

type RangeProps = {
  readonly range: Range;
  /** The working day of now. */
  readonly today: LocalDate;
  readonly onChange: (range: Range) => void;
};

const Arrow = ({ back }: { readonly back: boolean }): ReactElement => (
  <svg aria-hidden="true" width="22" height="18" viewBox="0 0 22 18">
    <path className="hf-line-ink" d={back ? 'M20 9H3M9 2.5 2.5 9 9 15.5' : 'M2 9h17M13 2.5 19.5 9 13 15.5'} />
  </svg>
);

/** Which days: a day, a week or a month by one tap, or any two dates. */
export const RangeFields = ({ range, today, onChange }: RangeProps): ReactElement => {
  const { t } = useText();
  const span = spanOf(range);
  const chosen = span !== null && rangeOf(span, today).from === range.from ? span : null;
  return (
    <div className="hf-range">
      <Choice
        label={t('bayTime.show')}
        value={chosen}
        onChange={(picked) => {
          onChange(rangeOf(picked, today));
        }}
        options={spans.map((one) => ({ value: one, label: t(`bayTime.span.${one}`) }))}
      />
      <div className="hf-range-dates">
        <DateField
          label={t('bayTime.from')}
          value={range.from}
          onChange={(from) => {
            if (from !== '') onChange({ from, to: range.to < from ? from : range.to });
          }}
        />
        <DateField
          label={t('bayTime.to')}
          value={range.to}
          onChange={(to) => {
            if (to !== '') onChange({ from: range.from > to ? to : range.from, to });
          }}
        />
      </div>
      <div className="hf-row">
        <Button
          size="small"
          label={t('bayTime.before')}
          onPress={() => {
            onChange(step(range, -1));
          }}
        >
          <Arrow back />
        </Button>
        <Button
          size="small"
          label={t('bayTime.after')}
          onPress={() => {
            onChange(step(range, 1));
          }}
        >
          <Arrow back={false} />
        </Button>
      </div>
    </div>
  );
};
