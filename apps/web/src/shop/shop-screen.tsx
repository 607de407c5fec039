// shop/ hides how people, bays, hours, seasons, settings and suppliers are kept. It guarantees that what enters figures
// holds from a day on, so that last year's bay time does not change by an edit, that what holds from when can be read
// beside it, and that only those see an act who may do it.
import { rowsOf, shopOf } from '@holdfast/board';
import type { TextKey } from '@holdfast/contract';
import { zoneAt } from '@holdfast/domain';
import type { ReactElement } from 'react';

import './shop.css';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { BayPage } from './bay-page.js';
import { BaysPart } from './bays-part.js';
import { FilesPart } from './files-part.js';
import { HoursPart } from './hours-part.js';
import { OtherDaysPart } from './other-days-part.js';
import { PeoplePart } from './people-part.js';
import { SeasonsPart } from './seasons-part.js';
import { SettingsPart } from './settings-part.js';
import { SuppliersPart } from './suppliers-part.js';
import { TheShopPart } from './the-shop-part.js';

type ShopPart = {
  readonly id: string;
  readonly heading: TextKey;
  readonly Body: (props: { readonly id: string }) => ReactElement | null;
};

/** The parts of the screen in their order. */
const parts: readonly ShopPart[] = [
  { id: 'people', heading: 'shop.people', Body: PeoplePart },
  { id: 'bays', heading: 'shop.bays', Body: BaysPart },
  { id: 'hours', heading: 'shop.hours', Body: HoursPart },
  { id: 'other-days', heading: 'shop.exceptions', Body: OtherDaysPart },
  { id: 'seasons', heading: 'shop.seasons', Body: SeasonsPart },
  { id: 'suppliers', heading: 'shop.suppliers', Body: SuppliersPart },
  { id: 'settings', heading: 'shop.settings', Body: SettingsPart },
  { id: 'files', heading: 'csv.lists', Body: FilesPart },
  { id: 'the-shop', heading: 'shop.theShop', Body: TheShopPart },
];

/** The way down to each part. */
const ShopIndex = (): ReactElement => {
  const { t } = useText();
  return (
    <nav className="hf-shop-index" aria-label={t('shop.index')}>
      <ul>
        {parts.map(({ id, heading }) => (
          <li key={id}>
            <a href={`#${id}`}>{t(heading)}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
};

const Shop = (): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const shop = shopOf(board);
  const zone = zoneAt(rowsOf(board), useNow(60_000));
  return (
    <div className="hf-read">
      <ScreenHead
        heading={t('nav.shop')}
        under={t('shop.under', { name: shop.name, zone: zone.replaceAll('_', ' '), currency: shop.currency })}
      />
      <ShopIndex />
      {parts.map(({ id, Body }) => (
        <Body key={id} id={id} />
      ))}
    </div>
  );
};

/** People, bays and lifts, hours, seasons, suppliers and settings of the shop. */
export const ShopScreen = (): ReactElement => (
  <SignedIn>
    <Shop />
  </SignedIn>
);

/** One bay of the shop. */
export const BayPageScreen = (): ReactElement => (
  <SignedIn>
    <BayPage />
  </SignedIn>
);
