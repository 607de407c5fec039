import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Locator, Page } from 'playwright-core';
import { startApp, type TestApp, type TestClient, type TestShop, testPassword } from '../kit/app.js';
import { desk, openBrowser, openWindow, type Person, signInAt, tablet } from '../kit/browser.js';

// One job from the desk to the keys, worked by three people at three windows. What one does stands on the other two
// within a second, without reload.
const within = 1_000;
const plate = 'HB 246 W';
const lineTitle = 'Rear step bumper, new';

describe('a job from check-in to hand-back in three windows', () => {
  let app: TestApp;
  let shop: TestShop;
  let browser: Browser;
  let manager: Person;
  let technician: Person;
  let clerk: Person;
  let colleague: TestClient;
  let slowest = { what: '', ms: 0 };

  beforeAll(async () => {
    app = await startApp();
    shop = await app.newShop('Tern Quay Garage');
    const { owner } = shop;
    const week = Object.fromEntries(
      ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((day) => [day, [['00:00', '24:00']]]),
    );
    const none = Object.fromEntries(Object.keys(week).map((day) => [day, []]));
    await owner.accepted('setOpeningHours', { validFrom: '2020-01-01', week: week as never, breaks: none as never });
    await owner.accepted('setSeasons', {
      seasons: [{ name: 'Salt', fromDay: '11-01', toDay: '03-31', validFrom: '2020-01-01' }],
    });
    await owner.accepted('addSupplier', { name: 'Harbour Panels' });
    for (const name of ['North lift', 'Flat bay']) {
      const equipment = [
        name === 'Flat bay'
          ? { kind: 'flat', inUse: true, grips: null }
          : { kind: 'twoPostLift', inUse: true, grips: 'points' },
      ];
      await owner.accepted('addBay', {
        name,
        spots: 1,
        equipment: equipment as never,
        capacity: '3500',
        capacityUnit: 'kg',
      });
    }
    await shop.addPerson({ name: 'Hedda Moor', roles: ['manager'] });
    await shop.addPerson({ name: 'Tam Reed', roles: ['technician'] });
    await shop.addPerson({ name: 'Greta Pole', roles: ['partsClerk'] });
    colleague = await shop.addPerson({ name: 'Ines Carrow', roles: ['technician'], skills: ['secondCheck'] });
    browser = await openBrowser();
    manager = await openWindow(browser, { size: desk });
    technician = await openWindow(browser, { size: tablet });
    clerk = await openWindow(browser, { size: desk });
    await signInAt(manager.page, app.url, { shop: shop.name, name: 'Hedda Moor', password: testPassword });
    await signInAt(technician.page, app.url, { shop: shop.name, name: 'Tam Reed', password: testPassword });
    await signInAt(clerk.page, app.url, { shop: shop.name, name: 'Greta Pole', password: testPassword });
  });
  afterAll(async () => {
    await browser.close();
    await app.stop();
  });

  const button = (page: Page, name: string | RegExp): Locator =>
    page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
  const sheet = (page: Page): Locator => page.getByRole('dialog');

  /** Waits in the other windows for what was just done; each has one second. */
  async function seen(what: string, ...places: readonly Locator[]): Promise<void> {
    const from = performance.now();
    await Promise.all(places.map((place) => place.first().waitFor({ timeout: within })));
    const ms = performance.now() - from;
    if (ms > slowest.ms) slowest = { what, ms };
  }
  async function gone(what: string, ...places: readonly Locator[]): Promise<void> {
    const from = performance.now();
    await Promise.all(places.map((place) => place.first().waitFor({ state: 'detached', timeout: within })));
    const ms = performance.now() - from;
    if (ms > slowest.ms) slowest = { what, ms };
  }

  it('is checked in at the desk', async () => {
    const { page } = manager;
    await technician.page.goto(`${app.url}/bay`);
    await clerk.page.goto(`${app.url}/floor`);
    await page.goto(`${app.url}/desk?check-in`);
    await page.getByLabel('Plate, name or key').fill(plate);
    await button(page, 'A vehicle new to us').click();
    await page.getByLabel('What vehicle it is').fill('Delivery van, white');
    await page.getByLabel('Curb mass', { exact: true }).fill('1900');
    await button(page, 'Record the vehicle').click();
    await page.getByLabel('Name of the customer').fill('Gannet Parcels');
    await page.getByLabel('Name', { exact: true }).fill('Nan Ferro');
    await page.getByLabel('Telephone').fill('010 555 0102');
    await button(page, 'Next').click();
    await page.getByLabel('What the customer reports').fill('Backed into a dock');
    await page.getByLabel('When it appears').fill('Always');
    await button(page, 'Next').click();
    await page.getByLabel('Odometer', { exact: true }).first().fill('81234');
    await page.getByLabel('Key', { exact: true }).fill('77');
    await page.getByLabel('Yard spot').fill('Y2');
    await button(page, 'Check it in').click();
    await seen('checked in', clerk.page.getByText(plate), technician.page.getByText(plate));
    await manager.picture('day-01-checked-in');
  });

  it('gets its line and the go-ahead', async () => {
    const { page } = manager;
    await page.getByRole('link', { name: 'To the job' }).click();
    await page.getByRole('heading', { name: /^Job \d+/ }).waitFor();
    await button(page, 'Add a line').click();
    await page.getByLabel('What is to be done').fill(lineTitle);
    await page.getByLabel('Book hours').fill('1.5');
    await page.getByLabel(/^Price/).fill('240');
    await button(page, 'Add the line').click();
    await button(page, `Answer: ${lineTitle}`).click();
    await button(page, 'Record the answer').click();
    await page.getByText(/Given by Nan Ferro/).waitFor();
    await manager.picture('day-02-go-ahead');
  });

  it('is placed in a bay by pick, then place', async () => {
    const { page } = manager;
    await page.goto(`${app.url}/floor`);
    await button(page, `Pick ${plate}`).click();
    await page.getByText(`${plate} is picked.`, { exact: false }).first().waitFor();
    await manager.picture('day-03-picked');
    await button(page, /^Place in Flat bay/).click();
    await seen('in the bay', clerk.page.locator(`[data-bay="Flat bay"]`).filter({ hasText: plate }));
    await manager.picture('day-04-placed');
  });

  it('is started, looked at and held for a part', async () => {
    const { page } = technician;
    await page.goto(`${app.url}/bay`);
    await page
      .getByRole('button', { name: new RegExp(plate) })
      .first()
      .click();
    await button(page, 'Start').first().click();
    await sheet(page)
      .getByRole('button', { name: new RegExp(lineTitle) })
      .first()
      .click();
    await seen(
      'started',
      manager.page.getByText(/worked on by Tam Reed/),
      clerk.page.getByText(/worked on by Tam Reed/),
    );
    await technician.picture('day-05-started');
    await button(page, 'Finding').click();
    await page.getByLabel('Where on the vehicle').fill('Rear step, left');
    await sheet(page).getByLabel('What was seen').fill('Bracket torn');
    await button(page, 'Record the finding').click();
    await sheet(page).waitFor({ state: 'detached' });
    await clerk.page.goto(`${app.url}/parts`);
    await clerk.page.getByRole('heading', { level: 1 }).waitFor();
    await button(page, 'Want a part').click();
    await sheet(page).getByLabel('Part', { exact: true }).fill('Step bumper');
    await button(page, 'Want it').click();
    await sheet(page).waitFor({ state: 'detached' });
    await seen('part wanted', clerk.page.getByText('Step bumper'));
    await button(page, 'Stop').first().click();
    await sheet(page).getByLabel('Loose, open or next').fill('One end is off');
    await button(page, 'Stop the clock').click();
    await sheet(page).waitFor({ state: 'detached' });
    await button(page, 'Hold').click();
    await sheet(page).getByRole('radio', { name: 'parts' }).check({ force: true });
    const tick = sheet(page).getByRole('checkbox', { name: /Step bumper/ });
    if ((await tick.count()) > 0) await tick.first().check({ force: true });
    await button(page, 'Hold it').click();
    await seen('held', manager.page.locator('[data-bay="Flat bay"]').getByText(/waits for parts/));
    await technician.picture('day-06-held');
  });

  it('is ordered and backordered with a date', async () => {
    const { page } = clerk;
    await page.getByText('Step bumper').first().click();
    await button(page, 'Order 1 part line').click();
    await sheet(page).getByRole('button', { name: /From/ }).first().click();
    await page.getByRole('option', { name: 'Harbour Panels' }).click();
    await sheet(page).getByLabel('Reference of the order').fill('HP-1');
    await button(page, 'Place the order').click();
    await sheet(page).waitFor({ state: 'detached' });
    await button(page, 'Due-in date: Step bumper').click();
    await sheet(page).getByLabel('Due on').fill('2031-02-03');
    await button(page, 'Record the date').click();
    await sheet(page).waitFor({ state: 'detached' });
    await seen('backordered', technician.page.getByText(/3 Feb 2031/));
    await clerk.picture('day-07-backordered');
  });

  it('gets a temporary fix with its limits and a second check', async () => {
    const { page } = technician;
    await button(page, 'Temporary fix').click();
    await sheet(page).getByLabel('In place of what').fill('Sensor bracket');
    await sheet(page).getByLabel('Where on the vehicle').fill('Rear step, right');
    await sheet(page)
      .getByLabel(/On which system/)
      .click();
    await page.getByRole('option', { name: 'driver assistance' }).click();
    await sheet(page).getByLabel('What ends it: the permanent repair').fill('New bracket');
    await sheet(page).getByLabel('Within days').fill('30');
    await technician.picture('day-08-fix');
    await button(page, 'Record the fix').click();
    await seen(
      'temporary fix',
      manager.page
        .locator('[data-bay="Flat bay"]')
        .getByTitle(/temporary fix/i)
        .or(manager.page.locator('[data-bay="Flat bay"] .hf-patch-slot svg')),
    );
    const { rows } = await app.database.superuser.query<{ id: string; version: number }>(
      'select id, version from temporary_fix where shop_id = $1',
      [shop.id],
    );
    const fix = rows[0];
    await colleague.accepted('recordSecondCheck', { temporaryFixId: fix?.id ?? '', version: fix?.version ?? 0 });
    await seen('second check', page.getByText(/Ines Carrow/));
  });

  it('goes on by itself when the part arrives', async () => {
    const { page } = clerk;
    await button(page, /Check in the order: Harbour Panels/).click();
    await sheet(page).getByRole('button', { name: 'All here and good' }).click();
    await gone('hold ended', manager.page.locator('[data-bay="Flat bay"]').getByText(/waits for parts/));
    await clerk.picture('day-09-arrived');
    await manager.picture('day-10-hold-ended');
  });

  it('is finished', async () => {
    const { page } = technician;
    await button(page, /^Fit/).first().click();
    await button(page, 'It is fitted').click();
    await sheet(page).waitFor({ state: 'detached' });
    await button(page, 'Start').first().click();
    await sheet(page)
      .getByRole('button', { name: new RegExp(lineTitle) })
      .first()
      .click();
    await sheet(page).waitFor({ state: 'detached' });
    await technician.picture('day-11-again');
    await button(page, /^(Line done|Done)/)
      .first()
      .click();
    const one = sheet(page).getByRole('button', { name: new RegExp(lineTitle) });
    if ((await one.count()) > 0) await one.first().click();
    if ((await sheet(page).getByLabel('What was done').count()) > 0)
      await sheet(page).getByLabel('What was done').fill('Bumper fitted');
    await button(page, 'It is done').click();
    await sheet(page).waitFor({ state: 'detached' });
    await technician.picture('day-11-finished');
  });

  it('is refused at hand-back with all its reasons, then handed back with its sheet and a follow-up', async () => {
    const { page } = manager;
    const { rows } = await app.database.superuser.query<{ id: string }>('select id from job where shop_id = $1', [
      shop.id,
    ]);
    await clerk.page.goto(`${app.url}/floor`);
    await clerk.page.locator('[data-bay="Flat bay"]').filter({ hasText: plate }).first().waitFor();
    await page.goto(`${app.url}/jobs/${rows[0]?.id ?? ''}/hand-back`);
    await button(page, 'Hand back').first().waitFor();
    await button(page, 'Hand back').first().click();
    await page.getByRole('alert').first().waitFor();
    const reasons = await page.getByRole('alert').first().getByRole('listitem').count();
    expect(reasons).toBeGreaterThanOrEqual(2);
    await manager.picture('day-12-refused');
    await button(page, /^Outcome/)
      .first()
      .click();
    await page.getByRole('radio', { name: 'gone' }).check({ force: true });
    await button(page, 'Record the outcome').click();
    await sheet(page).waitFor({ state: 'detached' });
    await button(page, /^Follow-up/)
      .first()
      .click();
    await button(page, 'Keep it outstanding').click();
    await sheet(page).waitFor({ state: 'detached' });
    await button(page, 'Hand back').first().click();
    await button(page, 'Print the sheet').waitFor();
    await gone('handed back', clerk.page.locator('[data-bay="Flat bay"]').filter({ hasText: plate }));
    await manager.picture('day-13-sheet');
    await page.goto(`${app.url}/outstanding`);
    await page.getByText(plate).first().waitFor();
    await page
      .getByText(/Sensor bracket/)
      .first()
      .waitFor();
    await manager.picture('day-14-outstanding');
    console.info(`the slowest to be seen elsewhere: ${slowest.what}, ${slowest.ms.toFixed(0)} ms`);
    expect([...manager.complaints, ...technician.complaints, ...clerk.complaints]).toEqual([]);
  });
});
