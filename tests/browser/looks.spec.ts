import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { loadDemo } from '../../apps/server/src/demo/load-demo.js';
import { startServer, type RunningServer } from '../../apps/server/src/start.js';
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
import { demoPlaces, type Place } from '../kit/demo-places.js';

const rules = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'];
const sizes: Readonly<Record<string, WindowSize>> = { phone, tablet, desk };
/** CSS px; a control that is drawn over its own hidden input is measured as it is drawn. */
const leastTarget = 44;

/** Each violation with the first of the places where it stands. */
async function violationsOf(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
  return violations.map(({ id, nodes }) => `${id}, ${nodes.length} times: ${nodes[0]?.html.slice(0, 200) ?? ''}`);
}

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

  /** The windows of one size and light, one for each person, signed in when they are first needed. */
  function windows(size: WindowSize, dark: boolean): { of(place: Place): Promise<Person>; close(): Promise<void> } {
    const open = new Map<string, Person>();
    return {
      async of({ who }) {
        const known = open.get(who.name);
        if (known !== undefined) return known;
        const person = await openWindow(browser, { size, dark });
        open.set(who.name, person);
        await signInAt(person.page, server.url, who);
        return person;
      },
      close: async () => {
        for (const person of open.values()) await person.close();
      },
    };
  }

  async function wrongWith(person: Person, { path }: Place): Promise<readonly string[]> {
    const { page, complaints } = person;
    complaints.length = 0;
    await page.goto(`${server.url}${path}`);
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await page.waitForLoadState('networkidle');
    const wider = await widerBy(page);
    return [
      ...(await violationsOf(page)),
      ...(wider > 0 ? [`wider than the window by ${wider} px`] : []),
      ...(await smallTargets(page, leastTarget)),
      ...complaints,
    ];
  }

  const looks = Object.keys(sizes).flatMap((size) => [
    { size, light: 'light' },
    { size, light: 'dark' },
  ]);
  it.each(looks)('can be read, fits and can be pressed on a $size in the $light', async ({ size, light }) => {
    const people = windows(sizes[size] ?? desk, light === 'dark');
    const wrong: Record<string, readonly string[]> = {};
    for (const place of places) {
      const person = await people.of(place);
      const found = await wrongWith(person, place);
      if (found.length > 0) wrong[place.name] = found;
      await person.picture(`look-${size}-${light}-${place.name}`);
    }
    await people.close();
    expect(wrong).toEqual({});
  });
});
