/** What the desk does on the whole day, by hand: booking, arrival, check-in, calls, other firms. */
import type { Page } from 'playwright-core';
import { button, choose, link, row, select, sheet, toScreen } from './on-screen.js';
import { day, type WholeDay } from './tern-wharf.js';

export interface NewVehicle {
  readonly plate: string;
  readonly description: string;
  readonly customer: string;
  readonly contact: string;
  readonly phone: string;
  readonly curbKg?: string;
  readonly grossKg?: string;
  readonly doesNotRoll?: boolean;
}

/** In booking or check-in: a vehicle new to the shop, then whose it is. */
export async function fillNewVehicle(page: Page, one: NewVehicle): Promise<void> {
  await page.getByLabel('Plate, name or key').fill(one.plate);
  await button(page, 'A vehicle new to us').click();
  await page.getByLabel('What vehicle it is').fill(one.description);
  if (one.curbKg !== undefined) await page.getByLabel('Curb mass', { exact: true }).fill(one.curbKg);
  if (one.grossKg !== undefined) await page.getByLabel('Gross rating', { exact: true }).fill(one.grossKg);
  if (one.doesNotRoll === true) {
    for (const name of ['It rolls', 'It may be driven'])
      await page.getByRole('checkbox', { name, exact: true }).uncheck({ force: true });
  }
  await button(page, 'Record the vehicle').click();
  await page.getByLabel('Name of the customer').fill(one.customer);
}

async function fillNewContact(page: Page, { contact, phone }: NewVehicle): Promise<void> {
  await page.getByLabel('Name', { exact: true }).fill(contact);
  await page.getByLabel('Telephone').fill(phone);
}

export const estate: NewVehicle = {
  plate: 'TW 301',
  description: 'Estate car, grey',
  customer: 'Iris Holm',
  contact: 'Iris Holm',
  phone: '010 555 0142',
  curbKg: '1500',
  grossKg: '2050',
};

/** On the telephone: who, what, one line with its hours, and when. */
export async function bookEstate({ desk: page, floor, otherDesk, act }: WholeDay): Promise<void> {
  await link(page, 'Book a visit').click();
  await fillNewVehicle(page, estate);
  await fillNewContact(page, estate);
  await button(page, 'Next').click();
  await page.getByLabel('What the customer reports').fill('Hums at the rear');
  await page.getByLabel('When it appears').fill('Long right bend at 80 km/h, warm');
  await page.getByLabel('What is to be done').fill('Look for the hum');
  await page.getByLabel('Book hours').fill('1');
  await page.getByLabel(/^Price/).fill('90');
  await button(page, 'Next').click();
  await page.getByLabel('Expected at').fill(`${day}T08:15`);
  await act('booked by telephone', {
    press: button(page, 'Book it'),
    seen: [
      floor.getByRole('region', { name: 'Expected today' }).getByText('TW 301'),
      otherDesk.getByRole('region', { name: 'Expected, not here yet' }).getByText('TW 301'),
    ],
  });
  await page.getByRole('heading', { name: /TW 301 is expected/ }).waitFor();
  await toScreen(page, 'Desk').click();
}

/** The first free box of a list of the desk that has the plate. */
const inList = (page: Page, list: string, plate: string) =>
  page.getByRole('region', { name: list }).locator('.hf-desk-row').filter({ hasText: plate });

export async function estateArrives({ desk: page, floor, otherDesk, act }: WholeDay): Promise<void> {
  await button(page, 'It is here: TW 301').click();
  await sheet(page).getByLabel('Yard spot').fill('Y1');
  await sheet(page).getByLabel('Key', { exact: true }).fill('1');
  await act('arrived', {
    press: button(page, 'Record that it is here'),
    seen: [
      floor
        .getByRole('region', { name: 'In the yard' })
        .locator('.hf-off-row')
        .filter({ hasText: 'yard spot Y1, key 1' }),
      inList(otherDesk, 'Arrived, not checked in', 'TW 301'),
    ],
    gone: [inList(otherDesk, 'Expected, not here yet', 'TW 301')],
  });
}

/** What was told at the booking stands; a go-ahead in advance is given. */
export async function checkInEstate({ desk: page, bay, otherDesk, act }: WholeDay): Promise<void> {
  await link(page, 'Check in TW 301').click();
  await page.getByLabel(/^Looking for the fault, up to/).fill('120');
  await button(page, 'Next').click();
  await page.getByText('Hums at the rear').waitFor();
  await button(page, 'Next').click();
  await page.getByLabel('Odometer', { exact: true }).first().fill('45010');
  await act('checked in', {
    press: button(page, 'Check it in'),
    gone: [inList(otherDesk, 'Arrived, not checked in', 'TW 301')],
  });
  await page.getByRole('heading', { name: /TW 301 is checked in/ }).waitFor();
  await button(bay, /^TW 301,/).waitFor();
  await toScreen(page, 'Desk').click();
}

/** The call about the two ways: it ends by its entry, and the answer on one of them is recorded with it. */
export async function callAboutTheTwoWays({ desk: page, bay, otherDesk, act }: WholeDay): Promise<void> {
  await page.getByText('Go-ahead for 2 lines').waitFor();
  await button(page, 'Record the call: TW 301').click();
  await choose(page, 'reached');
  await sheet(page)
    .getByRole('radiogroup', { name: 'Answer on “Press in a new bearing”' })
    .getByRole('radio', { name: 'given' })
    .check({ force: true });
  await sheet(page).getByLabel('What was said').fill('The new bearing, not the hub');
  await act('called: one of two ways given', {
    press: button(page, 'Put in the log'),
    seen: [row(bay, 'workLine', 'Press in a new bearing').filter({ hasText: 'go-ahead given' })],
    gone: [otherDesk.getByText('Go-ahead for 2 lines')],
  });
}

/** A fleet's van, with its limit and order number, and a second concern. */
export const van: NewVehicle = {
  plate: 'FV 77',
  description: 'Delivery van',
  customer: 'Tern Deliveries',
  contact: 'Mila Voss',
  phone: '010 555 0140',
  curbKg: '1950',
  grossKg: '2900',
};

export async function checkInVan({ desk: page, floor, act }: WholeDay): Promise<void> {
  await toScreen(page, 'Desk').click();
  await link(page, 'Check in').first().click();
  await fillNewVehicle(page, van);
  await page.getByLabel('Fleet', { exact: true }).fill('Tern');
  await fillNewContact(page, van);
  await page.getByLabel(/^Fleet limit for each visit, up to/).fill('500');
  await page.getByLabel('Order number').fill('TD-118');
  await button(page, 'Next').click();
  await page.getByLabel('What the customer reports').fill('Pulls when braking');
  await page.getByLabel('When it appears').fill('From 60 km/h, loaded');
  await button(page, 'One more concern').click();
  await page.getByLabel('What the customer reports').last().fill('Rear door scraped at a dock');
  await button(page, 'Next').click();
  await page.getByLabel('Odometer', { exact: true }).first().fill('120300');
  await page.getByLabel('Key', { exact: true }).fill('2');
  await page.getByLabel('Yard spot').fill('Y2');
  await page.getByLabel('Note for the board').fill('Parcels inside');
  await act('fleet van checked in', {
    press: button(page, 'Check it in'),
    seen: [floor.locator('.hf-off-row').filter({ hasText: 'FV 77' }).filter({ hasText: 'Parcels inside' })],
  });
  await link(page, 'To the job').click();
}

/** At the page of the job: put off by telephone, which is no go-ahead and stands in nobody's way. */
export async function putOff(
  { desk: page, act }: WholeDay,
  title: string,
  byName: string,
  seenAt: Page,
): Promise<void> {
  await button(page, `Answer: ${title}`).click();
  await choose(page, 'put off');
  await sheet(page).getByLabel('By whom').fill(byName);
  await act(`put off: ${title}`, {
    press: button(page, 'Record the answer'),
    seen: [row(seenAt, 'workLine', title).getByText(`Put off by ${byName}`, { exact: false })],
  });
}

/** A pick-up on a trailer: it does not roll. */
export const pickUp: NewVehicle = {
  plate: 'TW 5',
  description: 'Pick-up',
  customer: 'Hale Marine',
  contact: 'Gus Hale',
  phone: '010 555 0144',
  curbKg: '1800',
  grossKg: '2800',
  doesNotRoll: true,
};

export async function checkInPickUp({ desk: page, floor, act }: WholeDay): Promise<void> {
  await toScreen(page, 'Desk').click();
  await link(page, 'Check in').first().click();
  await fillNewVehicle(page, pickUp);
  await fillNewContact(page, pickUp);
  await button(page, 'Next').click();
  await page.getByLabel('What the customer reports').fill('Rear axle locked');
  await button(page, 'Next').click();
  await page.getByRole('radio', { name: 'not readable', exact: true }).check({ force: true });
  await page.getByLabel('Yard spot').fill('Y4');
  await act('pick-up checked in', {
    press: button(page, 'Check it in'),
    seen: [floor.locator('.hf-off-row').filter({ hasText: 'TW 5' }).filter({ hasText: 'yard spot Y4' })],
  });
  await link(page, 'To the job').click();
}

/** At the counter, on the page of the job. */
export async function givenAtTheDesk({ desk: page, bay, act }: WholeDay, title: string): Promise<void> {
  await button(page, `Answer: ${title}`).click();
  await choose(page, 'here in person');
  await act(`given here in person: ${title}`, {
    press: button(page, 'Record the answer'),
    seen: [row(bay, 'workLine', title).filter({ hasText: 'go-ahead given' })],
  });
}

/** Taken back while somebody is on it: the clock stops, and the bay is told to put it back. */
export async function takenBack({ desk: page, bay, floor, act }: WholeDay, title: string): Promise<void> {
  await button(page, `More: ${title}`).click();
  await button(page, `Taken back: ${title}`).click();
  await act('go-ahead taken back on a started line', {
    press: button(page, 'Take it back'),
    seen: [row(bay, 'workLine', title).getByText('Go-ahead taken back', { exact: false })],
    gone: [floor.locator('.hf-off-row').getByText(/worked on by/)],
  });
}

/** The vehicle that comes back: the desk takes it by its plate, and the earlier work is offered. */
export async function checkInComeback({ desk: page, floor, act }: WholeDay): Promise<void> {
  await toScreen(page, 'Desk').click();
  await link(page, 'Check in').first().click();
  await page.getByLabel('Plate, name or key').fill('TW 8');
  await button(page, 'Take TW 88').click();
  await button(page, 'Comes back for this: Adjust the handbrake').click();
  await page.getByText('This vehicle belongs to Sol Abery.').waitFor();
  await button(page, 'Next').click();
  await page.getByLabel('What the customer reports').fill('Lever comes up too far again');
  await button(page, 'Next').click();
  await page.getByLabel('Key', { exact: true }).fill('3');
  await page.getByLabel('Yard spot').fill('Y3');
  await act('comeback checked in', {
    press: button(page, 'Check it in'),
    seen: [floor.locator('.hf-off-row').filter({ hasText: 'TW 88' }).filter({ hasText: 'yard spot Y3, key 3' })],
  });
  await link(page, 'To the job').click();
  await page.getByText('comeback job').waitFor();
}

/** A component goes to paint and the van keeps its bay. `page` is the desk's page of the job. */
export async function doorGoesToPaint({ desk: page, floor, act }: WholeDay, seenAt: Page): Promise<void> {
  await button(page, 'Work by another firm').first().click();
  await choose(page, 'a component goes out');
  await select(page, /For the line/, 'Refit the door and its trim');
  await sheet(page).getByLabel('Firm', { exact: true }).fill('Brig Paint');
  await sheet(page).getByRole('textbox', { name: 'Component' }).fill('Rear door skin');
  await sheet(page).getByLabel('Due back').fill(`${day}T14:00`);
  await sheet(page)
    .getByLabel(/^Price/)
    .fill('150');
  await act('sublet arranged', {
    press: button(page, 'Arrange it'),
    seen: [row(seenAt, 'sublet', 'Rear door skin')],
  });
  await act('component sent away', {
    press: button(page, 'Goes out: Brig Paint'),
    seen: [row(seenAt, 'sublet', 'Rear door skin').filter({ hasText: 'under way' })],
  });
  await floor.locator('[data-bay="Bench bay"]').filter({ hasText: 'FV 77' }).waitFor();
}

export async function outsiderComesAndGoes({ desk: page, act }: WholeDay, seenAt: Page): Promise<void> {
  await button(page, 'Work by another firm').first().click();
  await choose(page, 'somebody comes in');
  await sheet(page).getByLabel('Firm', { exact: true }).fill('Clear Pane');
  await act('outsider arranged', { press: button(page, 'Arrange it'), seen: [row(seenAt, 'sublet', 'Clear Pane')] });
  await act('outsider in', {
    press: button(page, 'They are here: Clear Pane'),
    seen: [row(seenAt, 'sublet', 'Clear Pane').filter({ hasText: 'under way' })],
  });
  await button(page, 'They have gone: Clear Pane').click();
  await sheet(page)
    .getByLabel(/^What it costs/)
    .fill('60');
  await act('outsider out', {
    press: button(page, 'They have gone'),
    seen: [row(seenAt, 'sublet', 'Clear Pane').filter({ hasText: 'over' })],
  });
}

export async function doorIsBack({ desk: page, act }: WholeDay, seenAt: Page): Promise<void> {
  await button(page, 'It is back: Brig Paint').click();
  await sheet(page)
    .getByLabel(/^What it costs/)
    .fill('155');
  await act('component back', {
    press: button(page, 'It is back'),
    seen: [row(seenAt, 'sublet', 'Rear door skin').filter({ hasText: 'over' })],
  });
}
