/** What is done more than once in the main day, each with where the two others see it. */
import { expect } from '@jest/globals';
import type { JobView, ProblemDetails } from '@holdfast/contract';
import type { Locator, Page } from 'playwright-core';
import type { TestShop } from '../kit/app.js';
import type { LiveSteps } from './live-steps.js';
import {
  bayRow,
  button,
  inTheWay,
  link,
  row,
  select,
  sentences,
  sentencesInTheWay,
  sheet,
  toScreen,
} from './on-screen.js';
import { flatBay, names, type Windows } from './quay-garage.js';

export interface Day {
  readonly shop: TestShop;
  readonly at: Windows;
  readonly live: LiveSteps;
  /** The page of the job at the clerk and at the technician, open since the check-in. */
  readonly clerkJob: Page;
  readonly technicianJob: Page;
}

/** At the desk, up to the button that sends: a vehicle that is new to the shop, with one concern, into the yard. */
export async function fillCheckIn(page: Page, plate: string): Promise<void> {
  await toScreen(page, 'Desk').click();
  await link(page, 'Check in').click();
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
}

/** At the bay, up to the button that sends: a fix of tier 2, limited by days and by a season the shop has dated. */
export async function fillFix(page: Page): Promise<void> {
  await button(page, 'Temporary fix').click();
  await sheet(page).getByLabel('In place of what').fill('Sensor bracket');
  await sheet(page).getByLabel('Where on the vehicle').fill('Rear step, right');
  await select(page, /On which system/, 'driver assistance');
  await sheet(page).getByLabel('What ends it: the permanent repair').fill('New bracket');
  await sheet(page).getByLabel('Within days').fill('30');
  await select(page, /Before the season/, 'Salt');
}

/** A line on the page of the job. */
export async function addLine({ at, live, clerkJob }: Day, title: string, hours: string): Promise<void> {
  const { manager: page } = at;
  await button(page, 'Add a line').click();
  await page.getByLabel('What is to be done').fill(title);
  await page.getByLabel('Book hours').fill(hours);
  await page.getByLabel(/^Price/).fill('240');
  await live.step(`line added: ${title}`, {
    by: 'manager',
    press: button(page, 'Add the line'),
    seen: { technician: [row(at.technician, 'workLine', title)], clerk: [row(clerkJob, 'workLine', title)] },
  });
}

export async function giveGoAhead({ at, live, clerkJob }: Day, title: string): Promise<void> {
  await button(at.manager, `Answer: ${title}`).click();
  await live.step(`go-ahead: ${title}`, {
    by: 'manager',
    press: button(at.manager, 'Record the answer'),
    seen: {
      technician: [row(at.technician, 'workLine', title).filter({ hasText: 'go-ahead given' })],
      clerk: [row(clerkJob, 'workLine', title).filter({ hasText: 'Given by Nan Ferro' })],
    },
  });
}

/** `left`: what whoever stopped last left loose, which is shown whole before the clock starts. */
export async function start({ at, live }: Day, title: string, left?: string): Promise<void> {
  const { technician: page } = at;
  await button(page.getByRole('region', { name: 'The work' }), 'Start').click();
  const begin = `Start “${title}”`;
  if (left !== undefined) {
    await button(sheet(page), begin).click();
    await sheet(page).getByText(left, { exact: true }).waitFor();
  }
  const worked = (floor: Page): Locator => bayRow(floor, flatBay).getByText(`worked on by ${names.technician}`);
  await live.step(`started: ${title}`, {
    by: 'technician',
    press: button(sheet(page), left === undefined ? begin : `I have read it. ${begin}`),
    seen: { manager: [worked(at.managerFloor)], clerk: [worked(at.clerkFloor)] },
  });
}

export async function finish({ at, live, clerkJob }: Day, title: string): Promise<void> {
  const done = (other: Page): Locator => row(other, 'workLine', title).getByText(/^done/);
  await button(at.technician, 'Line done').click();
  await live.step(`finished: ${title}`, {
    by: 'technician',
    press: button(at.technician, 'It is done'),
    seen: { manager: [done(at.manager)], clerk: [done(clerkJob)] },
    gone: { manager: [bayRow(at.managerFloor, flatBay).getByText(/worked on by/)] },
  });
}

/** What stands in the way of the hand-back, as the server says. */
export async function blockersOnServer({ shop, at }: Day): Promise<NonNullable<JobView['blockers']>['road']> {
  const id = new URL(at.manager.url()).pathname.split('/')[2] ?? '';
  return ((await shop.owner.get(`/api/jobs/${id}`)).json as JobView).blockers?.road ?? [];
}

/**
 * Presses, and gives the codes of the refusal. All its sentences, and no others, are told beside the button, by the
 * server when it is asked for the job, and by the lists in all three windows.
 */
export async function refusedHandBack(day: Day): Promise<string[]> {
  const { manager: page } = day.at;
  const answered = page.waitForResponse((answer) => answer.url().endsWith('/api/commands/handBack'));
  await button(page, 'Hand back').click();
  const { refusals = [] } = (await (await answered).json()) as ProblemDetails;
  const refused = refusals.map(({ sentence }) => sentence).sort();
  const notice = page.getByRole('alert');
  await notice.waitFor();
  expect(await sentences(notice.getByRole('listitem').locator('span'))).toEqual(refused);
  expect((await blockersOnServer(day)).map(({ sentence }) => sentence).sort()).toEqual(refused);
  for (const one of [page, day.clerkJob, day.technicianJob]) expect(await sentencesInTheWay(one)).toEqual(refused);
  return refusals.map(({ code }) => code);
}

export interface Mend {
  /** The reason. */
  readonly code: string;
  /** The act that stands beside it, and the button that then sends. */
  readonly act: string;
  readonly sending: string;
  readonly fill?: () => Promise<void>;
}

/** Mends one reason by the act that stands beside it; it goes from the lists of the others. */
export async function mend(day: Day, { code, act, sending, fill }: Mend): Promise<void> {
  const { at, live, clerkJob, technicianJob } = day;
  const { manager: page } = at;
  const { sentence } = (await blockersOnServer(day)).find((one) => one.code === code) ?? { sentence: code };
  const entry = (other: Page): Locator => inTheWay(other).filter({ hasText: sentence });
  await button(entry(page), act).click();
  await fill?.();
  const outstanding = (other: Page): Locator => other.getByText('Follow-up: New bracket');
  await live.step(`mended: ${code.replace('handBack.', '')}`, {
    by: 'manager',
    press: button(sheet(page), sending),
    gone: { technician: [entry(technicianJob)], clerk: [entry(clerkJob)] },
    ...(code === 'handBack.fixWithoutFollowUp'
      ? { seen: { technician: [outstanding(at.technician)], clerk: [outstanding(at.clerk)] } }
      : {}),
  });
  const left = (await blockersOnServer(day)).map((one) => one.sentence).sort();
  for (const one of [page, clerkJob, technicianJob]) expect(await sentencesInTheWay(one)).toEqual(left);
}
