/** The shop in which the main day is worked: two bays, a season with dates, a supplier, three people at three windows. */
import type { Browser, Page } from 'playwright-core';
import { type TestApp, type TestShop, testPassword } from '../kit/app.js';
import { desk, openWindow, type Person, signInAt, tablet } from '../kit/browser.js';
import type { Who } from './live-steps.js';
import { toScreen } from './on-screen.js';

export const flatBay = 'Flat bay';
export const names: Readonly<Record<Who, string>> = {
  manager: 'Hedda Moor',
  technician: 'Tam Reed',
  clerk: 'Greta Pole',
};

export async function setUpQuayGarage(app: TestApp): Promise<TestShop> {
  const shop = await app.newShop('Tern Quay Garage');
  const { owner } = shop;
  const days = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
  const each = <T>(hours: readonly T[]) => Object.fromEntries(days.map((day) => [day, hours]));
  await owner.accepted('setOpeningHours', {
    validFrom: '2020-01-01',
    week: each([['00:00', '24:00']]) as never,
    breaks: each([]) as never,
  });
  await owner.accepted('setSeasons', {
    seasons: [{ name: 'Salt', fromDay: '11-01', toDay: '03-31', validFrom: '2020-01-01' }],
  });
  await owner.accepted('addSupplier', { name: 'Harbour Panels' });
  const bay = { spots: 1, capacity: '3500', capacityUnit: 'kg' } as const;
  await owner.accepted('addBay', {
    ...bay,
    name: 'North lift',
    equipment: [{ kind: 'twoPostLift', inUse: true, grips: 'points' }],
  });
  await owner.accepted('addBay', { ...bay, name: flatBay, equipment: [{ kind: 'flat', inUse: true, grips: null }] });
  await shop.addPerson({ name: names.manager, roles: ['manager'], skills: ['secondCheck'] });
  await shop.addPerson({ name: names.technician, roles: ['technician'] });
  await shop.addPerson({ name: names.clerk, roles: ['partsClerk'] });
  return shop;
}

/** The three at their windows: each has the page that the sign-in led to, and windows beside it. */
export interface Windows {
  readonly people: Readonly<Record<Who, Person>>;
  /** At the desk; then at the job. */
  readonly manager: Page;
  readonly managerFloor: Page;
  readonly technician: Page;
  readonly clerk: Page;
  readonly clerkFloor: Page;
}

export async function openWindows(browser: Browser, app: TestApp, shop: TestShop): Promise<Windows> {
  const people = {
    manager: await openWindow(browser, { size: desk }),
    technician: await openWindow(browser, { size: tablet }),
    clerk: await openWindow(browser, { size: desk }),
  };
  for (const who of ['manager', 'technician', 'clerk'] as const) {
    const { page } = people[who];
    await signInAt(page, app.url, { shop: shop.name, name: names[who], password: testPassword });
    await page.getByRole('heading', { level: 1 }).first().waitFor();
  }
  const { manager, technician, clerk } = people;
  return {
    people,
    manager: manager.page,
    managerFloor: await manager.beside(toScreen(manager.page, 'Floor')),
    technician: technician.page,
    clerk: clerk.page,
    clerkFloor: await clerk.beside(toScreen(clerk.page, 'Floor')),
  };
}
