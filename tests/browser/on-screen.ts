/** How a person finds things on any screen: by the words on them. */
import type { Locator, Page } from 'playwright-core';

export const button = (on: Page | Locator, name: string | RegExp): Locator =>
  on.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });

export const link = (page: Page, name: string): Locator => page.getByRole('link', { name, exact: true });

/** The link in the header that leads to a screen. */
export const toScreen = (page: Page, name: string): Locator =>
  page.getByRole('banner').getByRole('link', { name, exact: true });

/** The form that lies over the screen; of two, the upper one. */
export const sheet = (page: Page): Locator => page.getByRole('dialog').last();

export const choose = (page: Page, name: string): Promise<void> =>
  sheet(page).getByRole('radio', { name, exact: true }).check({ force: true });

export async function select(page: Page, label: RegExp, option: string): Promise<void> {
  await sheet(page).getByRole('button', { name: label }).click();
  await page.getByRole('option', { name: option, exact: true }).click();
}

/** A row of a table as any screen draws it: a work line, a part line, a hold. */
export const row = (page: Page, table: string, words: string | RegExp): Locator =>
  page.locator(`[id^="${table}-"]`).filter({ hasText: words });

export const bayRow = (floor: Page, bay: string): Locator => floor.locator(`[data-bay="${bay}"]`);

/** What stands in the way of a hand-back, as its screen lists it. */
export const inTheWay = (page: Page): Locator => page.getByRole('region', { name: 'In the way' }).locator('.hf-entry');

export const sentences = async (places: Locator): Promise<string[]> => (await places.allInnerTexts()).sort();

export const sentencesInTheWay = (page: Page): Promise<string[]> =>
  sentences(inTheWay(page).locator('.hf-entry-title'));
