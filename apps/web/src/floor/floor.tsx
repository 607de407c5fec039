// floor/ hides how the whole shop is seen at once. It guarantees that bays stand in the order of the building and are
// never sorted by status, that a vehicle is placed by one path for mouse, glove, keyboard and screen reader, that every
// bay that cannot take it says why, and that what stands somewhere already can always be recorded there.
import { expectedVisits, openVisits, spotsInOrder } from '@holdfast/board';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import './floor.css';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { Cards } from '../pieces/cards.js';
import { ForgottenClocks } from '../pieces/forgotten-clocks.js';
import { PeopleHere } from '../presence/people-here.js';
import { pathOf } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { StripBoard } from '../strip/strip-board.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { ExpectedToday } from './expected-today.js';
import { FindBox } from './find-box.js';
import { floorWindow } from './floor-window.js';
import { OffBays } from './off-bays.js';
import { PickedBar } from './picked-bar.js';
import { usePicked } from './picked.js';
import { SpotRow } from './spot-row.js';
import { keyOfBay, useFloorKeys } from './use-floor-keys.js';

const FloorScreen = (): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const board = useBoard();
  const now = useNow();
  const picked = usePicked(board, now);
  const spots = spotsInOrder(board, now);
  const visits = openVisits(board, now);
  const window = floorWindow(board, now);
  useFloorKeys(spots, picked);
  return (
    <>
      <div className="hf-floor-top">
        <ScreenHead
          heading={t('floor.heading')}
          under={t('floor.under', { bays: new Set(spots.map((spot) => spot.bay.id)).size, vehicles: visits.length })}
        />
        {may.read('find') && <FindBox board={board} now={now} />}
      </div>
      <Cards />
      <ForgottenClocks board={board} now={now} ofOthers />
      <PickedBar picked={picked} />
      <h2 className="hf-heard-only">{t('floor.bays')}</h2>
      {spots.length === 0 ? (
        <EmptyState heading={t('floor.noBays')}>
          <p>{t('floor.noBaysUnder')}</p>
          <Link href={pathOf.shop}>{t('floor.toShop')}</Link>
        </EmptyState>
      ) : (
        <StripBoard label={t('floor.bays')} {...window} now={now}>
          {spots.map((spot) => (
            <SpotRow
              key={`${spot.bay.id} ${String(spot.spot)}`}
              board={board}
              spot={spot}
              window={window}
              now={now}
              picked={picked}
              keyCap={spot.spot === 1 ? keyOfBay(spots, spot.bay.id) : null}
            />
          ))}
        </StripBoard>
      )}
      <OffBays visits={visits.filter(({ place }) => place?.kind !== 'bay')} board={board} now={now} picked={picked} />
      <PeopleHere board={board} now={now} />
      <ExpectedToday visits={expectedVisits(board, now)} board={board} now={now} />
      {picked.placing.question}
      {picked.swapping.question}
    </>
  );
};

export const Floor = (): ReactElement => (
  <SignedIn>
    <FloorScreen />
  </SignedIn>
);
