// desk/ hides how the desk's day is read off the live board and how a vehicle comes in. It guarantees that a check-in is
// never stopped by what only looks wrong (rule 15: it warns, and keeps what was said), and that nobody is asked twice for
// what the shop knows already.
import { openVisits } from '@holdfast/board';
import type { ReactElement } from 'react';
import { Link, useSearch } from 'wouter';

import './desk.css';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { pathOf } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { askedLines } from './asked-lines.js';
import { Calls } from './calls.js';
import { CheckIn } from './check-in.js';
import { Here } from './here.js';
import { Promised } from './promised.js';
import { Ready } from './ready.js';

const checkInSearch = 'check-in';

const Desk = (): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const board = useBoard();
  const now = useNow();
  const search = useSearch();
  if (search === checkInSearch && may.command('checkIn')) return <CheckIn />;
  const visits = openVisits(board, now);
  const calls = visits.filter((visit) => askedLines(visit).length > 0);
  return (
    <>
      <ScreenHead
        heading={t('desk.heading')}
        under={t('desk.under', { here: visits.length, calls: calls.length })}
        acts={
          may.command('checkIn') && (
            <Link className="hf-button hf-button-normal hf-look-ink" href={`${pathOf.desk}?${checkInSearch}`}>
              {t('desk.checkIn')}
            </Link>
          )
        }
      />
      <div className="hf-desk">
        <Calls visits={calls} />
        <Promised visits={visits} />
        <Ready visits={visits} />
        <Here visits={visits} />
      </div>
    </>
  );
};

/** What matters at the desk now, and the way in for a vehicle. */
export const DeskScreen = (): ReactElement => (
  <SignedIn>
    <Desk />
  </SignedIn>
);
