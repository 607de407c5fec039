/** What the technician does on the whole day, by hand, on a tablet. */
import { strict as assert } from 'node:assert';
import type { Page } from 'playwright-core';
import { bayRow, button, choose, row, select, sheet } from './on-screen.js';
import { bays, names, type WholeDay } from './tern-wharf.js';

const acts = (page: Page) => page.getByRole('region', { name: /^(The work|What you see and try|What others have to mind|Where it goes)$/ });
const open = (page: Page, name: string): Promise<void> => button(acts(page), name).click();

export async function answerFromStanding(lou: Page, title: string, seen: { readonly at: Page; readonly rests: string }, { act }: WholeDay): Promise<void> {
  await button(lou, `Answer: ${title}`).click();
  await choose(lou, 'standing go-ahead');
  await act(`given from the standing go-ahead: ${title}`, {
    press: button(lou, 'Record the answer'),
    seen: [row(seen.at, 'workLine', title).filter({ hasText: `Rests on the standing go-ahead: ${seen.rests}` })],
  });
}

export async function takeIntoBay(day: WholeDay, plate: string, bay: string): Promise<void> {
  const { bay: page, floor } = day;
  await open(page, 'Into a bay');
  await day.act(`${plate} into ${bay}`, {
    press: button(sheet(page).locator(`[data-bay="${bay}"]`), new RegExp(`^Place in ${bay}`)),
    seen: [bayRow(floor, bay).filter({ hasText: plate })],
  });
}

/** `after`: what was left on the line, shown in full before the start. */
export async function start(day: WholeDay, title: string, bay: string, after?: string): Promise<void> {
  const { bay: page, floor } = day;
  await open(page, 'Start');
  if (after !== undefined) {
    await button(sheet(page), `Start “${title}”`).click();
    await sheet(page).getByText(after).waitFor();
  }
  await day.act(`started: ${title}`, {
    press: button(sheet(page), after === undefined ? `Start “${title}”` : `I have read it. Start “${title}”`),
    seen: [bayRow(floor, bay).getByText(`worked on by ${names.technician}`)],
  });
}

/** The line is done, on the clock or off it. */
export async function finish(day: WholeDay, title: string, words: string, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await button(row(page, 'workLine', title), `Done: ${title}`).click();
  await sheet(page).getByLabel('What was done').fill(words);
  await day.act(`done: ${title}`, {
    press: button(page, 'It is done'),
    seen: [row(seenAt, 'workLine', title).getByText(words)],
  });
}

/** On stands nothing goes on the road: the sheet says why, and its button does not send. */
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
  await day.act('caution ended', { press: button(page, 'End the caution'), gone: [row(seenAt, 'caution', 'on stands')] });
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
  await entry.filter({ hasText: conditions }).filter({ hasText: appeared ? 'appeared' : 'did not appear' }).last().waitFor();
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

export async function causeAndFinding(day: WholeDay, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Cause');
  await choose(page, 'likely');
  await sheet(page).getByLabel('The cause').fill('Wheel bearing, rear left');
  await day.act('cause, likely', {
    press: button(page, 'Record the cause'),
    seen: [seenAt.getByText('Cause likely:').locator('..').filter({ hasText: 'Wheel bearing, rear left' })],
  });
  await open(page, 'Finding');
  await sheet(page).getByLabel('Where on the vehicle').fill('Rear left hub');
  await choose(page, 'wear');
  await sheet(page).getByLabel('What was seen').fill('Play and a rough turn');
  await day.act('finding', {
    press: button(page, 'Record the finding'),
    seen: [row(seenAt, 'finding', 'Play and a rough turn')],
  });
}

export async function addLine(day: WholeDay, line: { readonly title: string; readonly hours: string; readonly price?: string }, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Another line');
  await sheet(page).getByLabel('What is to be done').fill(line.title);
  await sheet(page).getByLabel('Book hours').fill(line.hours);
  if (line.price !== undefined) await sheet(page).getByLabel(/^Price/).fill(line.price);
  await day.act(`line: ${line.title}`, {
    press: button(page, 'Add the line'),
    seen: [row(seenAt, 'workLine', line.title)],
  });
}

/** On the technician's page of the job: both lines become one choice. */
export async function makeChoice(day: WholeDay, lou: Page, titles: readonly string[], seenAt: Page): Promise<void> {
  await button(lou, 'Make a choice').click();
  for (const title of titles)
    await sheet(lou).getByRole('checkbox', { name: title, exact: true }).check({ force: true });
  await day.act('two ways as a choice', {
    press: button(lou, 'Make it a choice'),
    seen: [seenAt.getByRole('list', { name: 'One of these' })],
  });
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
  await sheet(page).getByText(/torque/i).first().waitFor();
  assert.equal(await button(page, 'It goes out').isDisabled(), true);
  await day.picture('road test refused without the torque', page);
  await page.keyboard.press('Escape');
}

export async function torque(day: WholeDay, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await button(page, 'Record the torque').click();
  await sheet(page).getByLabel(/^Torque \(/).fill('110');
  await choose(page, 'the vehicle maker');
  await sheet(page).getByLabel('Tool').fill('Torque wrench 2');
  await day.act('torque recorded', {
    press: button(page, '1 wheel tightened'),
    seen: [seenAt.getByRole('region', { name: 'Wheels' }).getByText('Torque wrench 2')],
    gone: [seenAt.getByRole('region', { name: 'Wheels' }).getByText('no torque record')],
  });
}

export async function outcome(day: WholeDay, lou: Page, concern: string, what: string, seenAt: Page): Promise<void> {
  await button(lou, `Outcome: ${concern}`).click();
  await choose(lou, what);
  if ((await sheet(lou).getByLabel('Under which conditions').inputValue()) === '')
    await sheet(lou).getByLabel('Under which conditions').fill('Seen in daylight');
  await day.act(`outcome: ${concern}`, {
    press: button(lou, 'Record the outcome'),
    seen: [row(seenAt, 'concern', concern).getByText(new RegExp(what)).first()],
  });
}

export async function toYard(day: WholeDay, plate: string, spot: string): Promise<void> {
  const { bay: page, floor } = day;
  await open(page, 'To the yard');
  await sheet(page).getByLabel('Yard spot').fill(spot);
  await day.act(`${plate} to the yard`, {
    press: button(page, 'It stands there'),
    seen: [floor.getByRole('region', { name: 'In the yard' }).locator('.hf-off-row').filter({ hasText: plate })],
  });
}

/** Stops with what is loose, then carries the rest over. */
export async function stopAndCarryOver(day: WholeDay, lou: Page, title: string, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Stop');
  await sheet(page).getByLabel('Loose, open or next').fill('Door hangs, lower trim loose in the cab');
  await day.act('stopped, with what is loose', {
    press: button(page, 'Stop the clock'),
    seen: [row(seenAt, 'workLine', 'Handed over: Door hangs, lower trim loose in the cab')],
  });
  await button(lou, `More: ${title}`).click();
  await button(lou, `Carry over: ${title}`).click();
  await sheet(lou).getByLabel('What was done').fill('Door hung and aligned');
  await sheet(lou).getByLabel('What remains').fill('Lower trim');
  await sheet(lou).getByLabel('Hours that remain').fill('0:40');
  await sheet(lou).getByLabel('Within days').fill('30');
  await day.act('carried over, half done', {
    press: button(lou, 'Carry it over'),
    seen: [row(seenAt, 'workLine', title).getByText('carried over').first()],
  });
}
