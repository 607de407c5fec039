import { type Spot, spotsInOrder } from '@holdfast/board';
import { useEffect, type CSSProperties, type ReactElement } from 'react';
import { Link } from 'wouter';

import './wall.css';
import { floorWindow } from '../floor/floor-window.js';
import { useSession } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { HearingBar } from '../shell/hearing-bar.js';
import { useShell } from '../shell/shell-state.js';
import { useText } from '../text/use-text.js';
import { useWallTheme } from '../theme/use-wall-theme.js';
import { useWindowSize } from './use-window-size.js';
import { WallRow } from './wall-row.js';
import { rowsOnPage, wallFont } from './wall-size.js';

const pageMs = 20_000;
const usualInches = 55;
const usualMetres = 6;
/** The line at the top with the time and the page, as a share of the letters' size. */
const headShare = 1.1;

type Settings = { readonly inches: number; readonly metres: number; readonly byNumber: boolean };

/** What the address says of this screen: its diagonal, the farthest reader, plates or job numbers. */
const settingsOf = (search: string): Settings => {
  const asked = new URLSearchParams(search);
  const number = (name: string, usual: number): number => {
    const value = Number(asked.get(name));
    return value > 0 ? value : usual;
  };
  return {
    inches: number('inches', usualInches),
    metres: number('metres', usualMetres),
    byNumber: asked.get('show') === 'number',
  };
};

/** A board that has heard nothing turns its fills into frames here too, where there is no shell to say so. */
const useStaleLook = (): void => {
  const stale = useShell((shell) => shell.hearing.kind === 'stale');
  useEffect(() => {
    document.documentElement.toggleAttribute('data-stale', stale);
    return () => {
      document.documentElement.removeAttribute('data-stale');
    };
  }, [stale]);
};

/** The first word of a bay's name where no other bay begins with it; else the whole name. */
const shortNames = (spots: readonly Spot[]): ((spot: Spot) => string) => {
  const first = (name: string): string => name.split(/\s+/)[0] ?? name;
  const bays = new Map(spots.map(({ bay }) => [bay.id, bay.name]));
  return ({ bay }) => {
    const short = first(bay.name);
    return [...bays.values()].filter((name) => first(name) === short).length === 1 ? short : bay.name;
  };
};

const Wall = (): ReactElement => {
  const { t, format } = useText();
  useWallTheme();
  useStaleLook();
  const board = useBoard();
  const now = useNow(1_000);
  const { width, height } = useWindowSize();
  const { inches, metres, byNumber } = settingsOf(location.search);
  const font = wallFont(width, inches, metres);
  const spots = spotsInOrder(board, now);
  const perPage = rowsOnPage(height - font * headShare, font);
  const pages = Math.max(1, Math.ceil(spots.length / perPage));
  const page = Math.floor(now / pageMs) % pages;
  const minute = Math.floor(now / 60_000) * 60_000;
  const window = floorWindow(board, minute);
  const nameOf = shortNames(spots);
  return (
    <div className="hf-wall" style={{ '--u': `${font.toFixed(1)}px` } as CSSProperties}>
      <HearingBar />
      <header className="hf-wall-head">
        <h1>{t('wall.heading')}</h1>
        <p className="hf-figures">
          {pages > 1 && <span>{t('wall.page', { page: page + 1, pages })}</span>} <time>{format.time(now)}</time>
        </p>
        <BackLink />
      </header>
      <main>
        <ol className="hf-wall-rows">
          {spots.slice(page * perPage, (page + 1) * perPage).map((spot) => (
            <WallRow
              key={`${spot.bay.id} ${String(spot.spot)}`}
              board={board}
              spot={spot}
              bayName={nameOf(spot)}
              window={window}
              now={minute}
              font={font}
              byNumber={byNumber}
            />
          ))}
        </ol>
      </main>
    </div>
  );
};

/** The way back for people who are signed in with more than the wall; seen when it has the focus. */
const BackLink = (): ReactElement | null => {
  const { t } = useText();
  const { state } = useSession();
  const isDisplay = state.kind === 'signedIn' && state.session.person.roles.every((role) => role === 'wallScreen');
  return isDisplay ? null : (
    <Link className="hf-skip" href="/">
      {t('wall.back')}
    </Link>
  );
};

/** The board on the wall, read from six metres. */
export const WallScreen = (): ReactElement => (
  <SignedIn>
    <Wall />
  </SignedIn>
);
