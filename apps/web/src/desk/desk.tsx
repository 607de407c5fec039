// desk/ hides how the desk's day is read off the live board and how a vehicle comes in, booked or not. It guarantees that a
// check-in is never stopped by what only looks wrong (rule 15: it warns, and keeps what was said), that nobody is asked twice
// for what the shop knows already, and that every call to make stands here until its entry is in the contact log.
import { calendarOfBoard, expectedVisits, openVisits } from '@holdfast/board';
import type { ReactElement } from 'react';
import { Link, useSearch } from 'wouter';

import './desk.css';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { BookVisit } from './book-visit.js';
import { Calls } from './calls.js';
import { CheckIn } from './check-in.js';
import { DayLoad } from './day-load.js';
import { DeskIndex } from './desk-index.js';
import { bookPath, checkInPath, deskViewOf } from './desk-paths.js';
import { Expected } from './expected.js';
import { Here } from './here.js';
import { Arrived, WaitingHere } from './here-and-waiting.js';
import { NewCustomerForm } from './new-customer.js';
import { Promised } from './promised.js';
import { Ready, readyVisits } from './ready.js';
import { callsToMake } from './who-to-call.js';

const DeskActs = (): ReactElement => {
  const { t } = useText();
  const may = useMay();
  return (
    <>
      {may.command('checkIn') && (
        <Link className="hf-button hf-button-normal hf-look-ink" href={checkInPath()}>
          {t('desk.checkIn')}
        </Link>
      )}
      {may.command('bookJob') && (
        <Link className="hf-button hf-button-normal hf-look-frame" href={bookPath()}>
          {t('desk.book')}
        </Link>
      )}
      <Opener command="addCustomer" label={t('desk.newCustomer')} size="normal" look="plain">
        {(close) => <NewCustomerForm onClose={close} />}
      </Opener>
    </>
  );
};

/** The page that stays open at the desk, in the order of attention. */
const DeskPage = (): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const board = useBoard();
  const now = useNow();
  const calendar = calendarOfBoard(board);
  const endOfToday = calendar.dayBounds(calendar.dateOf(now)).to;
  const visits = openVisits(board, now);
  const calls = callsToMake(board, now);
  const expected = expectedVisits(board, now).filter(({ job }) => (job.expectedAt ?? now) < endOfToday);
  const arrived = visits.filter(({ job }) => job.checkedInAt === null);
  const waiting = visits.filter(({ job }) => job.waitsHere && job.checkedInAt !== null);
  const ready = readyVisits(board, visits);
  return (
    <>
      <ScreenHead
        heading={t('desk.heading')}
        under={t('desk.under', { here: visits.length, calls: calls.length })}
        acts={<DeskActs />}
      />
      <DeskIndex
        items={[
          { id: 'desk-calls', name: t('desk.calls'), count: calls.length },
          { id: 'desk-expected', name: t('desk.expected'), count: expected.length },
          { id: 'desk-arrived', name: t('desk.arrived'), count: arrived.length },
          { id: 'desk-waiting', name: t('desk.waiting'), count: waiting.length },
          { id: 'desk-ready', name: t('desk.ready'), count: ready.length },
          ...(may.read('dayLoad') ? [{ id: 'desk-load', name: t('load.heading'), count: null }] : []),
        ]}
      />
      <div className="hf-desk">
        <Calls calls={calls} visits={visits} />
        <Expected visits={expected} />
        <Arrived visits={arrived} />
        <WaitingHere visits={waiting} />
        <Ready visits={ready} />
        {may.read('dayLoad') && <DayLoad />}
        <Promised visits={visits} />
        <Here visits={visits} />
      </div>
    </>
  );
};

const Desk = (): ReactElement => {
  const may = useMay();
  const view = deskViewOf(useSearch());
  if (view.kind === 'checkIn' && may.command('checkIn')) return <CheckIn key={view.jobId} bookedId={view.jobId} />;
  if (view.kind === 'book' && may.command('bookJob')) return <BookVisit day={view.day} />;
  return <DeskPage />;
};

/** What matters at the desk now, and the ways in for a vehicle. */
export const DeskScreen = (): ReactElement => (
  <SignedIn>
    <Desk />
  </SignedIn>
);
