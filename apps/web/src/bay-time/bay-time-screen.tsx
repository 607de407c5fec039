import { calendarOfBoard } from '@holdfast/board';
import type { BayTimeView, FiguresView } from '@holdfast/contract';
import { daysBetween } from '@holdfast/shop-calendar';
import { useEffect, useState, type ReactElement } from 'react';

import './bay-time.css';
import { touchReads, useRead } from '../live/reads.js';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { CsvLink } from '../pieces/csv-link.js';
import { Part } from '../pieces/part.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText, type Text } from '../text/use-text.js';
import { MonthPart } from '../times/month-part.js';
import { TimesPart } from '../times/times-part.js';
import { EmptyState } from '../ui/empty-state.js';
import { DayStrips } from './day-strips.js';
import { type Range, rangeOf, spanOf } from './days.js';
import { Figure } from './figure.js';
import { FlowPart } from './flow-part.js';
import { HeldCost } from './held-cost.js';
import { PeopleHours } from './people-hours.js';
import { PeriodChart } from './period-chart.js';
import { RangeFields } from './range-fields.js';
import { BaysTable, HeldTable, percent } from './totals-table.js';

const minuteMs = 60_000;

/** What runs grows with the clock although nobody sends anything. */
const useReadEachMinute = (running: boolean): void => {
  useEffect(() => {
    if (!running) return undefined;
    const timer = setInterval(() => {
      touchReads(['bay-time']);
    }, minuteMs);
    return () => {
      clearInterval(timer);
    };
  }, [running]);
};

const rangeWords = ({ from, to }: Range, { t, format }: Text): string =>
  from === to ? format.day(from) : t('bayTime.range', { from: format.day(from), to: format.day(to) });

type FiguresProps = { readonly totals: BayTimeView['totals']; readonly figures: FiguresView | undefined };

const Figures = ({ totals, figures }: FiguresProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const duration = (milliseconds: number): string => format.duration(milliseconds / minuteMs);
  return (
    <dl className="hf-figure-row">
      <Figure
        name={t('bayTime.occupancy')}
        value={percent(totals.occupancy, text)}
        under={t('bayTime.occupancyMeans')}
      />
      <Figure name={t('bayTime.use')} value={percent(totals.utilisation, text)} under={t('bayTime.useMeans')} />
      {figures && (
        <Figure
          name={t('bayTime.useManned')}
          value={percent(figures.all.useManned, text)}
          under={t('bayTime.useMannedMeans')}
        />
      )}
      {figures && (
        <Figure
          name={t('bayTime.efficiency')}
          value={percent(figures.people.all.efficiency, text)}
          under={t('bayTime.efficiencyMeans')}
        />
      )}
      <Figure name={t('bayTime.kind.held')} value={duration(totals.classMs.held)} under={t('bayTime.heldMeans')} />
      <Figure
        name={t('bayTime.technicians')}
        value={duration(totals.technicianMs)}
        under={t('bayTime.overtime', { duration: duration(totals.technicianOvertimeMs) })}
      />
    </dl>
  );
};

const isWholeMonth = ({ from, to }: Range): boolean => spanOf({ from, to }) === 'month';

/** The clocks, stays, holds and presence that the figures of up to a week come from. */
const EntriesBehind = ({ view: { from, to } }: { readonly view: BayTimeView }): ReactElement | null => {
  const calendar = calendarOfBoard(useBoard());
  if (daysBetween(from, to) >= 7) return null;
  const begins = calendar.openIntervals(calendar.workingDayBounds(from).from, calendar.workingDayBounds(to).to)[0];
  return <TimesPart query={`from=${from}&to=${to}`} hints={['bay-time']} jobId={null} from={begins?.from ?? null} />;
};

type AccountProps = {
  readonly view: BayTimeView;
  readonly figures: FiguresView | undefined;
  readonly by: 'day' | 'week' | 'month';
  readonly onPick: (range: Range) => void;
};

const Account = ({ view, figures, by, onPick }: AccountProps): ReactElement => {
  const { t } = useText();
  if (view.open.length === 0) return <EmptyState heading={t('bayTime.closed')} />;
  return (
    <>
      <Figures totals={view.totals} figures={figures} />
      {figures && figures.periods.length > 1 && (
        <Part heading={t('bayTime.overTime')} under={t('bayTime.overTimeMeans')}>
          <PeriodChart view={figures} by={by} onPick={onPick} />
        </Part>
      )}
      <Part heading={t('bayTime.split')}>
        <BaysTable view={view} />
      </Part>
      <Part heading={t('bayTime.heldBy')}>
        {figures ? <HeldCost held={figures.held} /> : <HeldTable totals={view.totals} />}
      </Part>
      {figures && (
        <>
          <Part heading={t('bayTime.people')}>
            <PeopleHours people={figures.people} />
          </Part>
          <Part heading={t('bayTime.flow')}>
            <FlowPart flow={figures.flow} />
          </Part>
        </>
      )}
      {view.from === view.to && (
        <div className="hf-day-strips">
          <h2>{t('bayTime.day')}</h2>
          <DayStrips view={view} />
        </div>
      )}
      <EntriesBehind view={view} />
      {isWholeMonth(view) && view.now.slice(0, 10) > view.to && <MonthPart month={view.from.slice(0, 7)} />}
    </>
  );
};

/** Bars by day up to a month and a half, by week up to half a year, else by month. */
const periodsFor = ({ from, to }: Range): 'day' | 'week' | 'month' => {
  const days = daysBetween(from, to) + 1;
  if (days <= 45) return 'day';
  return days <= 190 ? 'week' : 'month';
};

/** While other days are being fetched the figures of those before are not theirs. */
const figuresOf = ({ from, to }: Range, figures: FiguresView | undefined): FiguresView | undefined =>
  figures?.from === from && figures.to === to ? figures : undefined;

const BayTime = (): ReactElement => {
  const text = useText();
  const { t } = text;
  const may = useMay();
  const calendar = calendarOfBoard(useBoard());
  const today = calendar.workingDayOf(useNow(minuteMs));
  const [range, setRange] = useState<Range>(() => rangeOf('day', today));
  const isRange = range.from <= range.to;
  const segments = range.from === range.to ? '&segments=true' : '';
  const path = may.read('bayTime') && isRange ? `/api/bay-time?from=${range.from}&to=${range.to}${segments}` : null;
  const read = useRead<BayTimeView>(path, ['bay-time']);
  const by = periodsFor(range);
  const figures = useRead<FiguresView>(
    path === null ? null : `/api/figures?from=${range.from}&to=${range.to}&by=${by}`,
    ['bay-time'],
  ).data;
  useReadEachMinute(range.to >= today);
  if (!may.read('bayTime')) {
    return (
      <>
        <ScreenHead heading={t('nav.bayTime')} />
        <EmptyState heading={t('bayTime.notYours')} />
      </>
    );
  }
  return (
    <>
      <ScreenHead
        heading={t('nav.bayTime')}
        under={isRange ? rangeWords(range, text) : t('bayTime.wrongRange')}
        acts={
          isRange && <CsvLink path={`/api/bay-time?from=${range.from}&to=${range.to}`} list={t('csv.list.bayTime')} />
        }
      />
      <RangeFields range={range} today={today} onChange={setRange} />
      {read.isPending && <p className="hf-quiet">{t('shell.loading')}</p>}
      {read.isError && <p className="hf-quiet">{t('bayTime.failed')}</p>}
      {read.data && isRange && (
        <Account view={read.data} figures={figuresOf(range, figures)} by={by} onPick={setRange} />
      )}
    </>
  );
};

/** What became of the opening time of every bay. */
export const BayTimeScreen = (): ReactElement => (
  <SignedIn>
    <BayTime />
  </SignedIn>
);
