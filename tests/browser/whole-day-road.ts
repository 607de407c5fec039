/** Road tests, attempts and wheels on the whole day, by hand, on the technician's tablet. */
import { strict as assert } from 'node:assert';
import type { Page } from 'playwright-core';
import { bayRow, button, choose, row, select, sheet } from './on-screen.js';
import { bays, names, type WholeDay } from './tern-wharf.js';
import { open } from './whole-day-bay.js';

export async function roadTestRefusedOnStands(day: WholeDay, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Caution or tag');
  await select(page, /Caution/, 'on stands');
  await day.act('caution: on stands', {
    press: button(page, 'Put it up'),
    seen: [row(seenAt, 'caution', 'on stands')],
  });
  await open(page, 'Road test');
  await sheet(page).getByText('It is on stands.', { exact: false }).waitFor();
  assert.equal(await button(page, 'It goes out').isDisabled(), true);
  await day.picture('road test refused on stands', page);
  await page.keyboard.press('Escape');
  await button(page, 'No longer: on stands').click();
  await day.act('caution ended', {
    press: button(page, 'End the caution'),
    gone: [row(seenAt, 'caution', 'on stands')],
  });
}

export async function goesOnRoadTest(day: WholeDay, plate: string, out: string): Promise<void> {
  const { bay: page, floor, otherDesk } = day;
  await open(page, 'Road test');
  await sheet(page).getByLabel('Odometer out').fill(out);
  await choose(page, `Keep ${bays.lift} for it`);
  const test = floor.getByRole('region', { name: 'On a road test' });
  await day.act('road test, its spot kept', {
    press: button(page, 'It goes out'),
    seen: [
      test.locator('.hf-off-row').filter({ hasText: plate }).filter({ hasText: names.technician }),
      bayRow(floor, bays.lift).getByText(`kept for ${plate}, on a road test`),
    ],
  });
  await otherDesk.getByText(plate).first().waitFor();
}

export async function attempt(day: WholeDay, conditions: string, appeared: boolean, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Try to make it appear');
  await sheet(page).getByLabel('Under which conditions').fill(conditions);
  await choose(page, appeared ? 'It appeared' : 'It did not');
  const entry = seenAt.getByRole('list', { name: 'Tries to make it appear' }).getByRole('listitem');
  const before = await entry.count();
  await button(page, 'Record the try').click();
  await entry.nth(before).waitFor();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await entry
    .filter({ hasText: conditions })
    .filter({ hasText: appeared ? 'appeared' : 'did not appear' })
    .last()
    .waitFor();
}

export async function isBackFromRoadTest(day: WholeDay, plate: string, reading: string): Promise<void> {
  const { bay: page, floor } = day;
  await open(page, 'Back from the road test');
  await sheet(page).getByLabel('Odometer in').fill(reading);
  await choose(page, `In ${bays.lift}, which was kept`);
  await day.act('back from the road test', {
    press: button(page, 'It is back'),
    gone: [floor.getByRole('region', { name: 'On a road test' })],
  });
  await bayRow(floor, bays.lift).filter({ hasText: plate }).waitFor();
}

const wheel = (page: Page, position: string) => sheet(page).locator(`[data-wheel="${position}"]`);

export async function wheelOffAndOn(day: WholeDay, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Wheels, torque');
  await choose(page, 'Taken off');
  await wheel(page, '2L').click();
  await day.act('wheel off', {
    press: button(page, '1 wheel off'),
    seen: [seenAt.getByRole('region', { name: 'Wheels' }).getByText('axle 2, left')],
  });
  await open(page, 'Wheels, torque');
  await choose(page, 'Put on');
  await day.act('wheel on, no torque yet', {
    press: button(page, '1 wheel on'),
    seen: [seenAt.getByRole('region', { name: 'Wheels' }).getByText('no torque record')],
  });
}

export async function roadTestRefusedWithoutTorque(day: WholeDay): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Road test');
  await sheet(page).getByText('Not on the road as it stands').waitFor();
  await sheet(page)
    .getByText(/torque/i)
    .first()
    .waitFor();
  assert.equal(await button(page, 'It goes out').isDisabled(), true);
  await day.picture('road test refused without the torque', page);
  await page.keyboard.press('Escape');
}

export async function torque(day: WholeDay, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await button(page, 'Record the torque').click();
  await sheet(page)
    .getByLabel(/^Torque \(/)
    .fill('110');
  await choose(page, 'the vehicle maker');
  await sheet(page).getByLabel('Tool').fill('Torque wrench 2');
  await day.act('torque recorded', {
    press: button(page, '1 wheel tightened'),
    seen: [seenAt.getByRole('region', { name: 'Wheels' }).getByText('Torque wrench 2')],
    gone: [seenAt.getByRole('region', { name: 'Wheels' }).getByText('no torque record')],
  });
}
