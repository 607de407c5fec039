import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { startApp, type TestApp, type TestShop } from '../kit/app.js';
import { openBrowser, pictures } from '../kit/browser.js';
import {
  addLine,
  type Day,
  fillCheckIn,
  fillFix,
  finish,
  giveGoAhead,
  mend,
  refusedHandBack,
  start,
} from './day-acts.js';
import { type LiveSteps, liveSteps, loadedAt, type Shown } from './live-steps.js';
import { bayRow, button, choose, link, row, select, sheet, toScreen } from './on-screen.js';
import { flatBay, names, openWindows, setUpQuayGarage, type Windows } from './quay-garage.js';

// One job from the desk to the keys, worked by three people at three windows. What one does stands on the windows of
// both others within a second of the press. After the sign-in nobody loads a page again: all ways are links and buttons.
const within = 1_000;
const plate = 'HB 246 W';
const bumper = 'Rear step bumper, new';
const lamps = 'Try the step lamps';
const hinge = 'Rear door hinge, look after it';

describe('a job from check-in to hand-back in three windows', () => {
  let app: TestApp;
  let shop: TestShop;
  let browser: Browser;
  let at: Windows;
  let live: LiveSteps;
  let day: Day;
  let loaded: readonly number[];
  let step = 0;

  beforeAll(async () => {
    app = await startApp();
    shop = await setUpQuayGarage(app);
    browser = await openBrowser();
    at = await openWindows(browser, app, shop);
    loaded = await loadedAt([at.manager, at.managerFloor, at.technician, at.clerk, at.clerkFloor]);
    live = liveSteps(within, takePictures);
  });
  afterAll(async () => {
    console.info(live.table());
    await browser.close();
    await app.stop();
  });

  async function takePictures(what: string, shown: readonly Shown[]): Promise<void> {
    step += 1;
    const name = `day-${String(step).padStart(2, '0')}-${what.replaceAll(/[^a-z]+/gi, '-')}`;
    for (const [index, { who, page }] of shown.entries())
      await page.screenshot({ path: join(pictures, `${name}-${String(index + 1)}-${who}.png`) });
  }

  const inFlatBay = (floor: Page): Locator => bayRow(floor, flatBay);

  it('is checked in at the desk', async () => {
    const { manager: page } = at;
    await fillCheckIn(page, plate);
    await live.step('checked in', {
      by: 'manager',
      press: button(page, 'Check it in'),
      seen: {
        clerk: [at.clerkFloor.locator('[data-job]').filter({ hasText: plate }).filter({ hasText: 'yard spot Y2' })],
        technician: [button(at.technician, new RegExp(plate))],
      },
    });
    await link(page, 'To the job').click();
    await button(at.technician, new RegExp(plate)).click();
    const technicianJob = await at.people.technician.beside(at.technician.getByRole('link', { name: /^Job \d+$/ }));
    const clerkJob = await at.people.clerk.beside(at.clerkFloor.getByRole('link', { name: new RegExp(plate) }));
    loaded = [...loaded, ...(await loadedAt([technicianJob, clerkJob]))];
    day = { shop, at, live, clerkJob, technicianJob };
  });

  it('gets its line and the go-ahead', async () => {
    await addLine(day, bumper, '1.5');
    await giveGoAhead(day, bumper);
  });

  it('is placed in a bay by pick, then place', async () => {
    const { managerFloor: page } = at;
    await button(page, `Pick ${plate}`).click();
    await page.getByText(`${plate} is picked.`, { exact: false }).first().waitFor();
    await live.step('placed in the bay', {
      by: 'manager',
      press: button(page, new RegExp(`^Place in ${flatBay}`)),
      seen: {
        technician: [at.technician.getByText(`in ${flatBay}`)],
        clerk: [inFlatBay(at.clerkFloor).filter({ hasText: plate })],
      },
    });
  });

  it('is started and looked at', async () => {
    const { clerkJob } = day;
    const { technician: page } = at;
    await start(day, bumper);
    await button(page, 'Finding').click();
    await page.getByLabel('Where on the vehicle').fill('Rear step, left');
    await sheet(page).getByLabel('What was seen').fill('Bracket torn');
    const found = (other: Page): Locator =>
      row(other, 'finding', 'Rear step, left').filter({ hasText: 'Bracket torn' });
    await live.step('finding', {
      by: 'technician',
      press: button(page, 'Record the finding'),
      seen: { manager: [found(at.manager)], clerk: [found(clerkJob)] },
    });
  });

  it('is held for a part', async () => {
    const { clerkJob } = day;
    const { technician: page } = at;
    await button(page, 'Want a part').click();
    await sheet(page).getByLabel('Part', { exact: true }).fill('Step bumper');
    await live.step('part wanted', {
      by: 'technician',
      press: button(page, 'Want it'),
      seen: {
        manager: [row(at.manager, 'partLine', 'Step bumper')],
        clerk: [row(at.clerk, 'partLine', 'Step bumper')],
      },
    });
    await button(page, 'Stop').click();
    await sheet(page).getByLabel('Loose, open or next').fill('One end is off');
    const left = (other: Page): Locator => row(other, 'workLine', 'Handed over: One end is off');
    await live.step('stopped, with what is loose', {
      by: 'technician',
      press: button(page, 'Stop the clock'),
      seen: { manager: [left(at.manager)], clerk: [left(clerkJob)] },
      gone: { manager: [inFlatBay(at.managerFloor).getByText(/worked on by/)] },
    });
    await button(page, 'Hold').click();
    await choose(page, 'parts');
    await sheet(page)
      .getByRole('checkbox', { name: /Step bumper/, checked: true })
      .waitFor({ state: 'attached' });
    await live.step('held for parts', {
      by: 'technician',
      press: button(page, 'Hold it'),
      seen: {
        manager: [
          inFlatBay(at.managerFloor).getByText(/waits for parts/),
          row(at.manager, 'hold', 'waits for Step bumper'),
        ],
        clerk: [
          inFlatBay(at.clerkFloor).getByText(/waits for parts/),
          at.clerk.getByText(`${flatBay} stands held for it`),
        ],
      },
    });
  });

  it('is ordered and backordered with a date', async () => {
    const { clerk: page } = at;
    await page.getByText('Step bumper').first().click();
    await button(page, 'Order 1 part line').click();
    await select(page, /From/, 'Harbour Panels');
    await sheet(page).getByLabel('Reference of the order').fill('HP-1');
    await live.step('ordered', {
      by: 'clerk',
      press: button(page, 'Place the order'),
      seen: {
        manager: [row(at.manager, 'partLine', 'ordered from Harbour Panels, HP-1')],
        technician: [row(at.technician, 'partLine', 'on order')],
      },
    });
    await button(page, 'Due-in date: Step bumper').click();
    await select(page, /The supplier says/, 'backordered');
    await sheet(page).getByLabel('Due on').fill('2031-02-03');
    await live.step('backordered with a date', {
      by: 'clerk',
      press: button(page, 'Record the date'),
      seen: {
        manager: [row(at.manager, 'partLine', /3 Feb 2031 \(backordered\)/)],
        technician: [row(at.technician, 'partLine', /3 Feb 2031/)],
      },
    });
  });

  it('gets a temporary fix with its limits, days and a season, and a second check', async () => {
    const { clerkJob } = day;
    const { technician: page, manager } = at;
    await fillFix(page);
    const fix = (other: Page): Locator =>
      row(other, 'temporaryFix', 'Rear step, right').filter({ hasText: 'Limits: within 30 days or before Salt' });
    const patch = (floor: Page): Locator => inFlatBay(floor).locator('.hf-patch-slot svg');
    await live.step('temporary fix', {
      by: 'technician',
      press: button(page, 'Record the fix'),
      seen: {
        manager: [fix(manager), patch(at.managerFloor)],
        clerk: [fix(clerkJob), patch(at.clerkFloor)],
      },
    });
    await button(manager, 'Second check: Rear step, right').click();
    await live.step('second check', {
      by: 'manager',
      press: button(manager, 'I have checked it'),
      seen: {
        technician: [row(page, 'temporaryFix', `checked by ${names.manager}`)],
        clerk: [row(clerkJob, 'temporaryFix', `Checked by ${names.manager}`)],
      },
    });
  });

  it('goes on by itself when the part arrives', async () => {
    const { clerk: page } = at;
    await button(page, 'Check in the order: Harbour Panels, HP-1').click();
    await live.step('part here, the hold ended by itself', {
      by: 'clerk',
      press: button(sheet(page), 'All here and good'),
      seen: {
        manager: [at.manager.getByText('ended by itself: the parts are here')],
        technician: [row(at.technician, 'partLine', 'Step bumper').filter({ hasText: 'here' })],
      },
      gone: {
        manager: [inFlatBay(at.managerFloor).getByText(/waits for parts/)],
        technician: [at.technician.locator('[id^="hold-"]')],
      },
    });
  });

  it('is fitted and finished', async () => {
    const { clerkJob } = day;
    const { technician: page } = at;
    await button(page, 'Fit: Step bumper').click();
    await live.step('part fitted', {
      by: 'technician',
      press: button(page, 'It is fitted'),
      seen: {
        manager: [row(at.manager, 'partLine', '0 here, 1 fitted')],
        clerk: [row(clerkJob, 'partLine', '1 fitted')],
      },
      gone: { clerk: [row(at.clerk, 'partLine', 'Step bumper')] },
    });
    await start(day, bumper, 'One end is off');
    await finish(day, bumper);
  });

  it('has more left to do: a line with the customer, a caution, a running clock', async () => {
    const { clerkJob } = day;
    const { technician: page } = at;
    await addLine(day, hinge, '0.5');
    await addLine(day, lamps, '0.2');
    await giveGoAhead(day, lamps);
    await start(day, lamps);
    await button(page, 'Caution or tag').click();
    await select(page, /Caution/, 'do not move');
    const slot = (floor: Page): Locator => inFlatBay(floor).locator('.hf-caution-slot svg');
    await live.step('tag “do not move”', {
      by: 'technician',
      press: button(page, 'Put it up'),
      seen: {
        manager: [row(at.manager, 'caution', 'do not move'), slot(at.managerFloor)],
        clerk: [row(clerkJob, 'caution', 'do not move'), slot(at.clerkFloor)],
      },
    });
  });

  it('is refused at hand-back with all its reasons', async () => {
    const { clerkJob, technicianJob } = day;
    const { manager: page } = at;
    for (const one of [page, clerkJob, technicianJob]) {
      await link(one, 'Hand back').first().click();
      await one.getByRole('heading', { name: `Hand back ${plate}` }).waitFor();
    }
    expect((await refusedHandBack(day)).sort()).toEqual([
      'handBack.cautionOpen',
      'handBack.clockRuns',
      'handBack.concernOpen',
      'handBack.fixWithoutFollowUp',
      'handBack.lineOpen',
      'handBack.lineUnfinished',
    ]);
    await takePictures('refused at hand-back', [
      { who: 'manager', page },
      { who: 'technician', page: technicianJob },
      { who: 'clerk', page: clerkJob },
    ]);
  });

  it('has each reason mended by the way that stands beside it', async () => {
    const { manager: page } = at;
    await mend(day, { code: 'handBack.clockRuns', act: `Stop the clock: ${lamps}`, sending: 'Stop the clock' });
    await mend(day, { code: 'handBack.lineUnfinished', act: `Done: ${lamps}`, sending: 'It is done' });
    await mend(day, {
      code: 'handBack.lineOpen',
      act: `Answer: ${hinge}`,
      sending: 'Record the answer',
      fill: () => choose(page, 'put off'),
    });
    await mend(day, {
      code: 'handBack.concernOpen',
      act: 'Outcome: Backed into a dock',
      sending: 'Record the outcome',
      fill: () => choose(page, 'gone'),
    });
    await mend(day, { code: 'handBack.cautionOpen', act: 'No longer: do not move', sending: 'End the caution' });
    for (const one of [at.technician, at.clerk]) {
      await toScreen(one, 'Outstanding').click();
      await one.getByText('No follow-up ends it yet.').waitFor();
    }
    await mend(day, {
      code: 'handBack.fixWithoutFollowUp',
      act: 'Follow-up: Rear step, right',
      sending: 'Keep it outstanding',
    });
  });

  it('is handed back with its sheet and a follow-up', async () => {
    const { clerkJob, technicianJob } = day;
    const { manager: page } = at;
    await page.getByText('Nothing stands in the way of the vehicle leaving by road.').waitFor();
    const drawn = (other: Page): Locator => other.getByRole('heading', { name: `What was done on ${plate}` });
    const here = (other: Page): Locator => other.getByRole('link', { name: /^here, job/ });
    await live.step('handed back, with its sheet', {
      by: 'manager',
      press: button(page, 'Hand back'),
      seen: { technician: [drawn(technicianJob)], clerk: [drawn(clerkJob)] },
      gone: {
        technician: [here(at.technician)],
        clerk: [here(at.clerk), inFlatBay(at.clerkFloor).filter({ hasText: plate })],
      },
    });
    for (const one of [page, technicianJob, clerkJob]) {
      await button(one, 'Print the sheet').waitFor();
      await one.getByText('Limits: within 30 days or before Salt').first().waitFor();
      await one.getByText(`Looked at by a second person: ${names.manager}`, { exact: false }).first().waitFor();
    }
    for (const one of [at.technician, at.clerk]) {
      const fix = one.locator('[data-outstanding="temporaryFix"]').filter({ hasText: plate });
      expect(await fix.innerText()).toMatch(/Sensor bracket[\s\S]*Follow-up: New bracket/);
    }
    const pages = [at.manager, at.managerFloor, at.technician, at.clerk, at.clerkFloor, technicianJob, clerkJob];
    expect(await loadedAt(pages)).toEqual(loaded);
    expect(Object.values(at.people).flatMap(({ complaints }) => complaints)).toEqual([]);
  });

  it('stood in both other windows within a second, each step of it', () => {
    expect(live.late()).toEqual([]);
  });
});
