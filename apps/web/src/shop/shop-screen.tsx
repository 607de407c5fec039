// shop/ hides how people, bays, hours, seasons and suppliers are kept. It guarantees that what enters figures holds from a
// day on, so that last year's bay time does not change by an edit, and that only those see an act who may do it.
import { shopOf } from '@holdfast/board';
import type { ReactElement } from 'react';

import './shop.css';
import { SignedIn } from '../live/signed-in.js';
import { useBoard } from '../live/use-board.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { BaysPart } from './bays-part.js';
import { HoursPart } from './hours-part.js';
import { PeoplePart } from './people-part.js';
import { SeasonsPart } from './seasons-part.js';
import { SuppliersPart } from './suppliers-part.js';

const Shop = (): ReactElement => {
  const { t } = useText();
  const shop = shopOf(useBoard());
  return (
    <>
      <ScreenHead
        heading={t('nav.shop')}
        under={t('shop.under', { name: shop.name, zone: shop.zone.replaceAll('_', ' '), currency: shop.currency })}
      />
      <PeoplePart />
      <BaysPart />
      <HoursPart />
      <SeasonsPart />
      <SuppliersPart />
    </>
  );
};

/** People, bays, hours, seasons and suppliers of the shop. */
export const ShopScreen = (): ReactElement => (
  <SignedIn>
    <Shop />
  </SignedIn>
);
