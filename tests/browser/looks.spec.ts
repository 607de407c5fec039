import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { loadDemo } from '../../apps/server/src/demo/load-demo.js';
import type { RunningServer } from '../../apps/server/src/serve.js';
import { startServer } from '../../apps/server/src/start.js';
import {
  desk,
  openBrowser,
  openWindow,
  type Person,
  phone,
  signInAt,
  tablet,
  type WindowSize,
} from '../kit/browser.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { demoPlaces, type Place, placeNames } from '../kit/demo-places.js';

const rules = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'];
const sizes: Readonly<Record<string, WindowSize>> = { phone, tablet, desk };
/** CSS px; a control that is drawn over its own hidden input is measured as it is drawn. */
const leastTarget = 44;

// Only what is wrong is told in full, and no page is opened for it: both make it quick.
const axeOn = (page: Page): AxeBuilder =>
  new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();

/** Each violation with the first of the places where it stands. */
async function violationsOf(axe: AxeBuilder): Promise<string[]> {
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => `${id}, ${nodes.length} times: ${nodes[0]?.html.slice(0, 200) ?? ''}`);
}

/** After a change of size, what is measured in the page has been drawn anew. */
const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise((resolve) => {
        requestAnimationFrame(() => {
          setTimeout(resolve, 100);
        });
      }),
  );

/** By how much the page is wider than its window, px. */
const widerBy = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What can be pressed, typed into or followed, is in sight, and is smaller than it has to be. */
function smallTargets(page: Page, least: number): Promise<string[]> {
  return page.evaluate((px) => {
    const pressed = 'a[href], button, input, textarea, select, summary, label.hf-tick, label.hf-choice-option';
    const small: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>(pressed)) {
      const { width, height } = element.getBoundingClientRect();
      const isSeen = element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
      // What is heard only is clipped to one pixel, by itself or by what holds it.
      const isHidden = element.closest('.hf-heard-only, .hf-skip, [aria-hidden="true"]') !== null || width <= 1;
      const clipping = element.parentElement?.getBoundingClientRect();
      const isClipped = clipping !== undefined && clipping.width <= 1;
      if (!isSeen || isHidden || isClipped || (width > px - 0.5 && height > px - 0.5)) continue;
      const name = (element.getAttribute('aria-label') ?? element.textContent).trim().slice(0, 40);
      small.push(
        `${element.tagName.toLowerCase()}.${element.className} “${name}” ${width.toFixed(0)}×${height.toFixed(0)}`,
      );
    }
    return small;
  }, least);
}

describe('every screen with a day under way', () => {
  let database: FreshDatabase;
  let server: RunningServer;
  let dataDir: string;
  let browser: Browser;
  let places: readonly Place[];
  const windows = new Map<string, Person>();

  beforeAll(async () => {
    database = await freshDatabase();
    dataDir = mkdtempSync(join(tmpdir(), 'holdfast-looks-'));
    server = await startServer(
      {
        port: 0,
        host: '127.0.0.1',
        dataDir,
        databaseUrl: database.databaseUrl,
        demo: 'on',
        tls: undefined,
        logLevel: 'error',
        pepper: 'pepper of the tests, the same for every server of a run',
      },
      { loadDemo },
    );
    places = await demoPlaces(server.url);
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
    await database.drop();
    rmSync(dataDir, { recursive: true, force: true });
  });

  /** The window of whoever works at the place, signed in when it is first needed. */
  async function windowOf({ who }: Place): Promise<Person> {
    const known = windows.get(who.name);
    if (known !== undefined) return known;
    const person = await openWindow(browser);
    windows.set(who.name, person);
    await signInAt(person.page, server.url, who);
    return person;
  }

  /** Everything is measured in the light; in the dark only colours are different, so only their contrast is. */
  async function wrongWith(person: Person, name: string): Promise<string[]> {
    const { page } = person;
    await page.emulateMedia({ colorScheme: 'light' });
    const wider = await widerBy(page);
    const wrong = [
      ...(wider > 0 ? [`wider than the window by ${wider} px`] : []),
      ...(await smallTargets(page, leastTarget)),
      ...(await violationsOf(axeOn(page).withTags(rules))),
    ];
    await person.picture(`look-${name}-light`);
    await page.emulateMedia({ colorScheme: 'dark' });
    const dark = await violationsOf(axeOn(page).withRules('color-contrast'));
    await person.picture(`look-${name}-dark`);
    return [...wrong, ...dark.map((violation) => `in the dark: ${violation}`)];
  }

  it.each(placeNames)('%s can be read in light and dark, fits and can be pressed, phone to desk', async (name) => {
    const place = places.find((one) => one.name === name);
    if (place === undefined) throw new Error(`the demo has no ${name}`);
    const person = await windowOf(place);
    const { page, complaints } = person;
    complaints.length = 0;
    await page.setViewportSize(phone);
    await page.goto(`${server.url}${place.path}`);
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await page.waitForLoadState('networkidle');
    const wrong: Record<string, readonly string[]> = {};
    for (const [size, viewport] of Object.entries(sizes)) {
      await page.setViewportSize(viewport);
      await drawn(page);
      wrong[size] = await wrongWith(person, `${size}-${name}`);
    }
    expect({ ...wrong, complaints }).toEqual({ phone: [], tablet: [], desk: [], complaints: [] });
  });

  it('what is too small, too pale or too wide is found', async () => {
    const person = await openWindow(browser, { size: phone });
    await person.page.setContent(
      `<html lang="en"><title>Wrong</title><main><button style="width:30px;height:44px">Go</button>
       <p style="color:#bbb;background:#fff">pale</p><p style="width:600px">wide</p></main></html>`,
    );
    expect(await wrongWith(person, 'phone-wrong')).toEqual([
      expect.stringMatching(/^wider than the window/),
      'button. “Go” 30×44',
      expect.stringMatching(/^color-contrast/),
      expect.stringMatching(/^in the dark: color-contrast/),
    ]);
    await person.close();
  });
});
