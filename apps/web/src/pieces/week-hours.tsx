import type { HoursOfDay, HoursOfWeek } from '@holdfast/domain';
import { weekdays, type Weekday } from '@holdfast/shop-calendar';
import type { ReactElement } from 'react';

import './week-hours.css';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';

/** A week with nothing on any day. */
export const emptyWeek: HoursOfWeek = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };

/** Whether every span of a day has both its ends. */
export const areWhole = (hours: HoursOfDay): boolean => hours.every(([from, to]) => from !== '' && to !== '');

/** Whether every span of the week has both its ends. */
export const isWhole = (week: HoursOfWeek): boolean => weekdays.every((day) => areWhole(week[day]));

/** The hours of one day in words: "07:30–12:00, 13:00–17:00". */
export const dayWords = (hours: HoursOfDay): string => hours.map(([from, to]) => `${from}–${to}`).join(', ');

// The end of a day is 24:00 on the wire; a time field can only say 00:00.
const shownEnd = (to: string): string => (to === '24:00' ? '00:00' : to);
const wiredEnd = (to: string): string => (to === '00:00' ? '24:00' : to);

type SpanProps = {
  readonly name: string;
  readonly span: readonly [string, string];
  readonly onChange: (span: readonly [string, string]) => void;
  readonly onRemove: () => void;
};

const Span = ({ name, span: [from, to], onChange, onRemove }: SpanProps): ReactElement => {
  const { t } = useText();
  return (
    <span className="hf-span">
      <input
        className="hf-input"
        type="time"
        aria-label={t('week.from', { name })}
        value={from}
        onChange={(event) => {
          onChange([event.target.value, to]);
        }}
      />
      <span aria-hidden="true">–</span>
      <input
        className="hf-input"
        type="time"
        aria-label={t('week.to', { name })}
        value={shownEnd(to)}
        onChange={(event) => {
          onChange([from, wiredEnd(event.target.value)]);
        }}
      />
      <Button size="small" look="plain" label={t('week.remove', { name })} onPress={onRemove}>
        <svg aria-hidden="true" width="14" height="14" viewBox="0 0 14 14">
          <path className="hf-line-ink" d="M2 2l10 10M12 2 2 12" />
        </svg>
      </Button>
    </span>
  );
};

type DayProps = {
  readonly name: string;
  readonly hours: HoursOfDay;
  readonly first: readonly [string, string];
  /** Words on the act that adds a span. */
  readonly add: string;
  readonly onChange: (hours: HoursOfDay) => void;
};

/** The spans of one day, and one more. */
export const DayHours = ({ name, hours, first, add, onChange }: DayProps): ReactElement => {
  return (
    <div className="hf-day-spans">
      {hours.map((span, at) => (
        <Span
          key={at}
          name={hours.length > 1 ? `${name} ${String(at + 1)}` : name}
          span={span}
          onChange={(changed) => {
            onChange(hours.map((one, n) => (n === at ? changed : one)));
          }}
          onRemove={() => {
            onChange(hours.filter((_, n) => n !== at));
          }}
        />
      ))}
      <Button
        size="small"
        look="plain"
        label={`${add}: ${name}`}
        onPress={() => {
          onChange([...hours, hours.length === 0 ? first : ['', '']]);
        }}
      >
        {add}
      </Button>
    </div>
  );
};

type WeekProps = {
  readonly hours: HoursOfWeek;
  readonly onHours: (week: HoursOfWeek) => void;
  /** Breaks beside the hours; left out where there are none, as for delivery runs. */
  readonly breaks?: HoursOfWeek;
  readonly onBreaks?: (week: HoursOfWeek) => void;
  readonly caption: string;
  readonly hoursHeading: string;
};

const working: readonly Weekday[] = ['tue', 'wed', 'thu', 'fri'];

/** Monday's spans on the other four days as well. */
const asMonday = (week: HoursOfWeek): HoursOfWeek => ({
  ...week,
  ...Object.fromEntries(working.map((day) => [day, week.mon])),
});

/** Hours, and breaks in them, by weekday; local times of the shop. A span whose end lies before its start crosses midnight. */
export const WeekHours = (props: WeekProps): ReactElement => {
  const { t } = useText();
  const { hours, onHours, breaks, onBreaks } = props;
  const row = (day: Weekday): ReactElement => {
    const name = t(`week.${day}`);
    return (
      <tr key={day}>
        <th scope="row">{t(`week.short.${day}`)}</th>
        <td data-label={props.hoursHeading}>
          <DayHours
            name={name}
            hours={hours[day]}
            first={['07:30', '17:00']}
            add={t('week.add')}
            onChange={(changed) => {
              onHours({ ...hours, [day]: changed });
            }}
          />
        </td>
        {breaks && onBreaks && (
          <td data-label={t('week.breaks')}>
            <DayHours
              name={t('week.breakOn', { day: name })}
              hours={breaks[day]}
              first={['12:00', '12:30']}
              add={t('week.addBreak')}
              onChange={(changed) => {
                onBreaks({ ...breaks, [day]: changed });
              }}
            />
          </td>
        )}
      </tr>
    );
  };
  return (
    <div className="hf-week-frame">
      <table className="hf-week">
        <caption className="hf-heard-only">{props.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{t('week.day')}</th>
            <th scope="col">{props.hoursHeading}</th>
            {breaks && <th scope="col">{t('week.breaks')}</th>}
          </tr>
        </thead>
        <tbody>{weekdays.map(row)}</tbody>
      </table>
      <Button
        size="small"
        onPress={() => {
          onHours(asMonday(hours));
          if (breaks && onBreaks) onBreaks(asMonday(breaks));
        }}
      >
        {t('week.asMonday')}
      </Button>
    </div>
  );
};

/** A week in words, days with the same hours together: "Mon–Fri 07:30–17:00". Empty when nothing is on. */
export const useWeekWords = (): ((week: HoursOfWeek) => string) => {
  const { t } = useText();
  return (week) => {
    const runs: { from: Weekday; to: Weekday; words: string }[] = [];
    for (const day of weekdays) {
      const words = dayWords(week[day]);
      const last = runs.at(-1);
      if (last?.words === words) last.to = day;
      else runs.push({ from: day, to: day, words });
    }
    return runs
      .filter((run) => run.words !== '')
      .map(({ from, to, words }) =>
        from === to
          ? `${t(`week.short.${from}`)} ${words}`
          : `${t(`week.short.${from}`)}–${t(`week.short.${to}`)} ${words}`,
      )
      .join('; ');
  };
};
