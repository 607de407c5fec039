/** A real Chromium (Debian's), and people who sit at windows of it. */
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Locator, type Page } from 'playwright-core';

export const pictures = join('tests', 'browser', 'out');

const executablePath = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) =>
  existsSync(path),
);

export async function openBrowser(more: readonly string[] = []): Promise<Browser> {
  if (executablePath === undefined) throw new Error('Browser tests need Chromium: apt-get install chromium');
  mkdirSync(pictures, { recursive: true });
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...more,
    ],
  });
}

export interface WindowSize {
  readonly width: number;
  readonly height: number;
}
export const phone: WindowSize = { width: 390, height: 844 };
export const tablet: WindowSize = { width: 820, height: 1180 };
export const desk: WindowSize = { width: 1440, height: 900 };

export interface Person {
  readonly page: Page;
  /** Everything the page complained about in its console, and requests that failed. */
  readonly complaints: string[];
  /** A second window of this person beside the first, opened as a person does: by a link pressed with Shift. */
  beside(link: Locator): Promise<Page>;
  picture(name: string): Promise<void>;
  close(): Promise<void>;
}

export interface PersonOptions {
  readonly size?: WindowSize;
  readonly dark?: boolean;
  readonly token?: string;
  readonly ignoreHTTPSErrors?: boolean;
}

/** A window with cookies of its own, and those that are opened beside it. */
export async function openWindow(browser: Browser, options: PersonOptions = {}): Promise<Person> {
  const context = await browser.newContext({
    viewport: options.size ?? desk,
    colorScheme: options.dark === true ? 'dark' : 'light',
    ignoreHTTPSErrors: options.ignoreHTTPSErrors ?? false,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
  });
  context.setDefaultTimeout(15_000);
  const complaints: string[] = [];
  context.on('weberror', (failure) => complaints.push(failure.error().message));
  context.on('console', (message) => {
    if (message.type() === 'error' && !message.text().includes('status of 4')) complaints.push(message.text());
  });
  const page = await context.newPage();
  return {
    page,
    complaints,
    beside: async (link) => {
      const [opened] = await Promise.all([context.waitForEvent('page'), link.click({ modifiers: ['Shift'] })]);
      await opened.getByRole('heading', { level: 1 }).first().waitFor();
      return opened;
    },
    picture: async (name) => {
      await page.screenshot({ path: join(pictures, `${name}.png`), fullPage: false });
    },
    close: () => context.close(),
  };
}

/** Signs in at the sign-in page, as a person does. */
export async function signInAt(
  page: Page,
  url: string,
  who: { readonly shop: string; readonly name: string; readonly password: string },
): Promise<void> {
  await page.goto(`${url}/sign-in`);
  await page.getByLabel('Shop', { exact: true }).fill(who.shop);
  await page.getByLabel('Your name', { exact: true }).fill(who.name);
  await page.getByLabel('Password', { exact: true }).fill(who.password);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await page.waitForURL((address) => !address.pathname.startsWith('/sign-in'));
}
