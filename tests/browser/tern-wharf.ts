/** The shop of `examples/the-whole-day.jsonl`, as it is worked by hand: a desk, a technician's tablet, a manager's floor. */
import { strict as assert } from 'node:assert';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { type TestShop, testPassword } from '../kit/app.js';
import { desk, openWindow, type Person, pictures, signInAt, tablet } from '../kit/browser.js';
import { link, toScreen } from './on-screen.js';

export const names = { desk: 'Jan Beck', technician: 'Lou Marten', manager: 'Noor Castell' } as const;
export const bays = { lift: 'Lift', bench: 'Bench bay', gate: 'Gate' } as const;
/** The day of the story, a Tuesday; the clock runs on from here. */
export const day = '2035-10-09';

/** Bays and people; the rest of the day is worked at the screens. */
export async function setUpTernWharf(shop: TestShop): Promise<void> {
  const { owner } = shop;
  await shop.setClock(`${day}T07:00:00+01:00`, 1);
  const each = <T>(hours: readonly T[]) =>
    Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((name) => [name, hours]));
  await owner.accepted('setOpeningHours', {
    validFrom: '2035-10-01',
    week: each([['07:00', '22:00']]) as never,
    breaks: each([]) as never,
  });
  await owner.accepted('addBay', {
    name: bays.lift,
    spots: 1,
    equipment: [{ kind: 'twoPostLift', inUse: true, grips: 'points' }],
    capacity: '3500',
    capacityUnit: 'kg',
  });
  for (const name of [bays.bench, bays.gate])
    await owner.accepted('addBay', { name, spots: 1, equipment: [{ kind: 'flat', inUse: true, grips: null }] });
  await shop.addPerson({ name: names.manager, roles: ['manager'] });
  await shop.addPerson({ name: names.desk, roles: ['desk'] });
  await shop.addPerson({ name: names.technician, roles: ['technician'], skills: ['secondCheck'] });
}

/** The hatchback was here this morning for its handbrake and has left; done as the estate car is worked by hand. */
export async function earlierWork({ owner }: TestShop): Promise<void> {
  const version = async (path: string, list: 'lines' | 'concerns'): Promise<number> => {
    const view = (await owner.get(path)).json as Record<typeof list, { version: number }[]>;
    return view[list][0]?.version ?? 0;
  };
  const vehicle = { plate: 'TW 88', description: 'Hatchback, blue', kind: 'light', drive: 'combustion' } as const;
  const { vehicle: vehicleId = '' } = (await owner.accepted('addVehicle', { ...vehicle, curbKg: 1210, grossKg: 1650 }))
    .created;
  const { created } = await owner.accepted('checkIn', {
    vehicleId,
    customer: { name: 'Sol Abery' },
    contact: { name: 'Sol Abery', phone: '010 555 0143', mayCollect: true },
    concerns: [{ words: 'Handbrake lever comes up too far' }],
    odometer: { value: 40_210, unit: 'mi', source: 'read' },
  });
  const { job: jobId = '' } = created;
  const path = `/api/jobs/${jobId}`;
  const line = await owner.accepted('addLine', { jobId, title: 'Adjust the handbrake', bookMinutes: 20, price: '35' });
  const { workLine: lineId = '' } = line.created;
  const given = { answer: 'given', byName: 'Sol Abery', how: 'there' } as const;
  await owner.accepted('recordGoAhead', { lineId, version: await version(path, 'lines'), ...given });
  await owner.accepted('finishLine', { lineId, version: await version(path, 'lines'), words: 'Four clicks now' });
  const concernId = ((await owner.get(path)).json as { concerns: { id: string }[] }).concerns[0]?.id ?? '';
  const outcome = { outcome: 'gone', conditions: 'Pulled up on the ramp' } as const;
  await owner.accepted('recordConcernOutcome', { concernId, version: await version(path, 'concerns'), ...outcome });
  const { job } = (await owner.get(path)).json as { job: { version: number } };
  const received = { leavesBy: 'road', receivedBy: 'Sol Abery', receivedHow: 'there' } as const;
  await owner.accepted('handBack', { jobId, version: job.version, ...received });
}

export interface Act {
  /** The button that sends. */
  readonly press: Locator;
  /** What appears in other windows; it was not there before. */
  readonly seen?: readonly Locator[];
  /** What goes away there. */
  readonly gone?: readonly Locator[];
}

/** Three people and their windows; what one does is awaited where another one sits. */
export interface WholeDay {
  readonly shop: TestShop;
  readonly people: { readonly desk: Person; readonly technician: Person; readonly manager: Person };
  /** Jan's Desk, where she also books and checks in. */
  readonly desk: Page;
  /** Lou's My bay. */
  readonly bay: Page;
  /** Noor's Floor. */
  readonly floor: Page;
  /** Noor's Desk, to see what Jan does to it. */
  readonly otherDesk: Page;
  readonly act: (what: string, act: Act) => Promise<void>;
  readonly picture: (what: string, page: Page) => Promise<void>;
}

export async function openTernWharf(browser: Browser, url: string, shop: TestShop): Promise<WholeDay> {
  const people = {
    desk: await openWindow(browser, { size: desk }),
    technician: await openWindow(browser, { size: tablet }),
    manager: await openWindow(browser, { size: desk }),
  };
  for (const who of ['desk', 'technician', 'manager'] as const) {
    const { page } = people[who];
    await signInAt(page, url, { shop: shop.name, name: names[who], password: testPassword });
    await page.getByRole('heading', { level: 1 }).first().waitFor();
  }
  const [jan, lou, noor] = [people.desk.page, people.technician.page, people.manager.page];
  await toScreen(jan, 'Desk').click();
  await toScreen(lou, 'My bay').click();
  await toScreen(noor, 'Floor').click();
  const otherDesk = await people.manager.beside(toScreen(noor, 'Desk'));
  let step = 0;
  const picture = async (what: string, page: Page): Promise<void> => {
    step += 1;
    const name = `whole-day-${String(step).padStart(2, '0')}-${what.replaceAll(/[^a-z0-9]+/gi, '-')}`;
    await page.screenshot({ path: join(pictures, `${name}.png`) });
  };
  return {
    shop,
    people,
    desk: jan,
    bay: lou,
    floor: noor,
    otherDesk,
    picture,
    act: async (what, { press, seen = [], gone = [] }) => {
      for (const place of seen) assert.equal(await place.count(), 0, `${what}: ${String(place)} was there before`);
      for (const place of gone) assert.notEqual(await place.count(), 0, `${what}: ${String(place)} was not there`);
      await press.click();
      for (const place of seen) await place.first().waitFor();
      for (const place of gone) await place.first().waitFor({ state: 'detached' });
      await press.page().getByRole('dialog').waitFor({ state: 'detached' });
      await picture(what, press.page());
      const other = [...seen, ...gone][0]?.page();
      if (other !== undefined && other !== press.page()) await picture(`${what} seen`, other);
    },
  };
}

/** The page of a job in a window beside, opened by a link that is in sight. */
export const jobBeside = (person: Person, from: Locator): Promise<Page> => person.beside(from);

/** From the page of the job to its hand-back. */
export async function toHandBack(job: Page, plate: string): Promise<void> {
  await link(job, 'Hand back').first().click();
  await job.getByRole('heading', { name: `Hand back ${plate}` }).waitFor();
}
