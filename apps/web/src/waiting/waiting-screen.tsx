import { calendarOfBoard } from '@holdfast/board';
import { useMemo, type ReactElement } from 'react';

import './waiting.css';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { awaitedOn, heldBayMinutes } from './awaited.js';
import { AwaitedItem } from './awaited-item.js';

const minuteMs = 60_000;

const Waiting = (): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = Math.floor(useNow() / minuteMs) * minuteMs;
  const awaited = useMemo(() => awaitedOn(board, now), [board, now]);
  const calendar = calendarOfBoard(board);
  const lift = heldBayMinutes(awaited);
  const bays = new Set(awaited.flatMap((one) => one.blocked.flatMap(({ bay }) => (bay === null ? [] : [bay])))).size;
  return (
    <>
      <ScreenHead
        heading={t('nav.waiting')}
        under={t('waiting.under', { count: awaited.length, bays, lift: format.duration(lift) })}
      />
      {awaited.length === 0 ? (
        <EmptyState heading={t('waiting.none')}>
          <p>{t('waiting.noneWhy')}</p>
        </EmptyState>
      ) : (
        <ol className="hf-awaited-list">
          {awaited.map((one) => (
            <AwaitedItem key={one.key} awaited={one} board={board} calendar={calendar} now={now} />
          ))}
        </ol>
      )}
    </>
  );
};

/** What is awaited, each thing once, with what it keeps from going on. */
export const WaitingScreen = (): ReactElement => (
  <SignedIn>
    <Waiting />
  </SignedIn>
);
