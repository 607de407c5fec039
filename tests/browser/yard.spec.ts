import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { startApp, type TestApp, type TestShop, testPassword } from '../kit/app.js';
import { desk, openBrowser, openWindow, type Person, pictures, signInAt } from '../kit/browser.js';
import { type CheckedIn, checkInMany } from '../kit/many-vehicles.js';
import { toScreen } from './on-screen.js';

// Thirty vehicles in the yard. A Tuesday before opening; open 08:00 to 16:30 less half an hour, Monday to Friday.
const day = '2035-10-09';
const howMany = 30;
const days = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;

async function setUpYard(app: TestApp): Promise<TestShop> {
  const shop = await app.newShop('Tern Yard');
  await shop.setClock(`${day}T07:00:00+01:00`);
  const each = (hours: readonly (readonly [string, string])[]) => ({
    ...Object.fromEntries(days.map((name) => [name, hours])),
    sat: [],
    sun: [],
  });
  await shop.owner.accepted('setOpeningHours', {
    validFrom: '2035-10-01',
    week: each([['08:00', '16:30']]) as never,
    breaks: each([['12:00', '12:30']]) as never,
  });
  await shop.addPerson({ name: 'Noor Castell', roles: ['manager'] });
  for (const name of ['Lou Marten', 'Bea Sand']) await shop.addPerson({ name, roles: ['technician'] });
  return shop;
}

/** Work with the go-ahead on a vehicle that is here, minutes. */
async function workOn({ owner }: TestShop, jobId: string, bookMinutes: number): Promise<void> {
  const line = { jobId, title: 'Renew the exhaust', bookMinutes, price: '400' };
  const { workLine: lineId = '' } = (await owner.accepted('addLine', line)).created;
  const { lines } = (await owner.get(`/api/jobs/${jobId}`)).json as { lines: { id: string; version: number }[] };
  const version = lines.find(({ id }) => id === lineId)?.version ?? 0;
  await owner.accepted('recordGoAhead', { lineId, version, answer: 'given', byName: 'Aud Abney', how: 'telephone' });
}

async function bookFor({ owner }: TestShop, plate: string, on: string, bookMinutes: number): Promise<void> {
  const vehicle = { plate, description: 'Small car', kind: 'light', drive: 'combustion' } as const;
  const { vehicle: vehicleId = '' } = (await owner.accepted('addVehicle', vehicle)).created;
  await owner.accepted('bookJob', {
    vehicleId,
    customer: { name: `Owner of ${plate}` },
    expectedAt: `${on}T08:00:00+01:00`,
    concerns: [{ words: 'Service' }],
    lines: [{ title: 'Service', bookMinutes }],
  });
}

describe('thirty vehicles in the yard', () => {
  let app: TestApp;
  let shop: TestShop;
  let browser: Browser;
  let noor: Person;
  let page: Page;
  let vehicles: readonly CheckedIn[];

  beforeAll(async () => {
    app = await startApp();
    shop = await setUpYard(app);
    vehicles = await checkInMany(shop.owner, howMany);
    browser = await openBrowser();
    noor = await openWindow(browser, { size: desk });
    page = noor.page;
    await signInAt(page, app.url, { shop: shop.name, name: 'Noor Castell', password: testPassword });
    await toScreen(page, 'Floor').click();
    await page
      .locator('.hf-off-row')
      .nth(howMany - 1)
      .waitFor();
  });
  afterAll(async () => {
    await browser.close();
    await app.stop();
  });

  /** The row that has the focus, if it is in sight: what it says. */
  const gone = (): Promise<string> =>
    page.evaluate(() => {
      const row = document.activeElement;
      const { top, bottom } = row?.getBoundingClientRect() ?? { top: -1, bottom: -1 };
      const isInSight = top >= 0 && bottom <= innerHeight;
      return row instanceof HTMLElement && isInSight ? row.innerText.replaceAll(/\s+/g, ' ') : '';
    });

  it.each(['plate', 'customer', 'keyTag', 'yardSpot'] as const)(
    'each is found by its %s in two keystrokes and the text',
    async (by) => {
      const wrong: string[] = [];
      for (const vehicle of vehicles) {
        await page.keyboard.press('/');
        await page.keyboard.insertText(vehicle[by]);
        await page.keyboard.press('Enter');
        const row = await gone();
        const isIt =
          row.startsWith(vehicle.plate) && row.includes(`yard spot ${vehicle.yardSpot}, key ${vehicle.keyTag}`);
        if (!isIt) wrong.push(`${vehicle[by]}: ${row}`);
      }
      await page.screenshot({ path: join(pictures, `yard-by-${by}.png`) });
      expect(wrong).toEqual([]);
    },
  );

  it('is told that nothing begins with what is no plate, name, key or spot of it', async () => {
    await page.keyboard.press('/');
    await page.keyboard.insertText('QQ 0');
    await page.getByText('Nothing here begins with that.').waitFor();
    await page.keyboard.press('Escape');
  });

  // By hand: two people of 8 hours each are 16 hours a day. Today 10 hours are here, so 6 are left; tomorrow 15.5 are
  // booked, so half an hour is left; on Thursday 14, so 2 are left; Friday is empty, and no day has more than 16.
  it('the desk names the first day with room for so many book hours', async () => {
    const [first] = vehicles;
    await workOn(shop, first?.jobId ?? '', 600);
    await bookFor(shop, 'RM 1', '2035-10-10', 930);
    await bookFor(shop, 'RM 2', '2035-10-11', 840);
    await toScreen(page, 'Desk').click();
    const load = page.getByRole('region', { name: 'Load of the days' });
    await load.getByText('15 h 30 of 16 h 00').waitFor();
    await load.getByText('14 h 00 of 16 h 00').waitFor();
    const rooms = [
      ['0.5', 'First day with room for 30 min: Tue, 9 Oct 2035'],
      ['6', 'First day with room for 6 h 00: Tue, 9 Oct 2035'],
      ['6:15', 'First day with room for 6 h 15: Fri, 12 Oct 2035'],
      ['16', 'First day with room for 16 h 00: Fri, 12 Oct 2035'],
      ['16:15', 'No day of the next 60 has room for 16 h 15 in one go.'],
    ] as const;
    for (const [hours, sentence] of rooms) {
      await load.getByLabel('Room for book hours').fill(hours);
      await load.getByText(sentence).waitFor();
    }
    await workOn(shop, first?.jobId ?? '', 15);
    await load.getByLabel('Room for book hours').fill('6');
    await load.getByText('First day with room for 6 h 00: Fri, 12 Oct 2035').waitFor();
    await load.getByLabel('Room for book hours').fill('2');
    await load.getByText('First day with room for 2 h 00: Tue, 9 Oct 2035').waitFor();
    await page.screenshot({ path: join(pictures, 'yard-load.png') });
    expect(noor.complaints).toEqual([]);
  });
});
