import { calendarOfBoard } from '@holdfast/board';
import type { BayTimeView } from '@holdfast/contract';
import { useEffect, useState, type ReactElement } from 'react';

import './bay-time.css';
import { touchReads, useRead } from '../live/reads.js';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { Part } from '../pieces/part.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText, type Text } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { DayStrips } from './day-strips.js';
import type { Range } from './days.js';
import { rangeOf } from './days.js';
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

const Figure = ({
  name,
  value,
  under,
}: {
  readonly name: string;
  readonly value: string;
  readonly under: string;
}): ReactElement => (
  <div className="hf-figure">
    <dt>{name}</dt>
    <dd>
      <strong className="hf-figures">{value}</strong>
      <span className="hf-quiet hf-small">{under}</span>
    </dd>
  </div>
);

const Figures = ({ totals }: { readonly totals: BayTimeView['totals'] }): ReactElement => {
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
      <Figure name={t('bayTime.kind.held')} value={duration(totals.classMs.held)} under={t('bayTime.heldMeans')} />
      <Figure
        name={t('bayTime.technicians')}
        value={duration(totals.technicianMs)}
        under={t('bayTime.overtime', { duration: duration(totals.technicianOvertimeMs) })}
      />
    </dl>
  );
};

const Account = ({ view }: { readonly view: BayTimeView }): ReactElement => {
  const { t } = useText();
  if (view.open.length === 0) return <EmptyState heading={t('bayTime.closed')} />;
  return (
    <>
      <Figures totals={view.totals} />
      <Part heading={t('bayTime.split')}>
        <BaysTable view={view} />
      </Part>
      <Part heading={t('bayTime.heldBy')}>
        <HeldTable totals={view.totals} />
      </Part>
      {view.from === view.to && (
        <div className="hf-day-strips">
          <h2>{t('bayTime.day')}</h2>
          <DayStrips view={view} />
        </div>
      )}
    </>
  );
};

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
      <ScreenHead heading={t('nav.bayTime')} under={isRange ? rangeWords(range, text) : t('bayTime.wrongRange')} />
      <RangeFields range={range} today={today} onChange={setRange} />
      {read.isPending && <p className="hf-quiet">{t('shell.loading')}</p>}
      {read.isError && <p className="hf-quiet">{t('bayTime.failed')}</p>}
      {read.data && isRange && <Account view={read.data} />}
    </>
  );
};

/** What became of the opening time of every bay. */
export const BayTimeScreen = (): ReactElement => (
  <SignedIn>
    <BayTime />
  </SignedIn>
);
