/** How vehicles leave on the whole day, by hand: handed back whole, and released unfinished. */
import { strict as assert } from 'node:assert';
import type { ProblemDetails } from '@holdfast/contract';
import type { Page } from 'playwright-core';
import { button, inTheWay, link, sheet, toScreen } from './on-screen.js';
import { toHandBack, type WholeDay } from './tern-wharf.js';

type Leaving = 'handBack' | 'releaseUnfinished';

/** Presses, and gives the codes of the refusal; each of its sentences stands in the list as well. */
export async function refusedToLeave(page: Page, command: Leaving, act: string): Promise<string[]> {
  const answered = page.waitForResponse((answer) => answer.url().endsWith(`/api/commands/${command}`));
  await button(page, act).click();
  const { refusals = [] } = (await (await answered).json()) as ProblemDetails;
  const notice = page.getByRole('alert');
  for (const { sentence } of refusals) {
    await notice.getByText(sentence).waitFor();
    assert.equal(await inTheWay(page).filter({ hasText: sentence }).count(), 1, sentence);
  }
  return refusals.map(({ code }) => code);
}

/** From the list of what is ready at the desk, or from its job, to the hand-back. */
export async function fromTheDesk({ desk: page }: WholeDay, plate: string): Promise<void> {
  await toScreen(page, 'Desk').click();
  await link(page, `Hand back ${plate}`).click();
  await page.getByRole('heading', { name: `Hand back ${plate}` }).waitFor();
}

/** When the wheels are to be tightened again is told first; the way to it stands beside the reason. */
export async function tellRetorque(day: WholeDay, seenAt: Page): Promise<void> {
  const { desk: page } = day;
  await button(inTheWay(page), 'Tell when to tighten again').click();
  await sheet(page).getByLabel('What', { exact: true }).fill('Tighten the rear left wheel again');
  await sheet(page).getByLabel('Where the distance comes from').fill('As the vehicle maker asks');
  await sheet(page)
    .getByLabel(/^Within (mi|km)/)
    .fill('30');
  await day.act('re-torque follow-up', {
    press: button(page, 'Keep it outstanding'),
    seen: [seenAt.getByText('Tighten the rear left wheel again')],
  });
}

/** The keys go; the sheet is drawn, and the vehicle is gone from the floor. */
export async function handBack(
  day: WholeDay,
  plate: string,
  to: { readonly name: string; readonly how?: string },
  seenAt: Page,
): Promise<void> {
  const { desk: page, floor } = day;
  await page.getByText('Nothing stands in the way of the vehicle leaving by road.').waitFor();
  await page.getByLabel('By whom').fill(to.name);
  await page.getByRole('radio', { name: to.how ?? 'here', exact: true }).check({ force: true });
  await day.act(`handed back: ${plate}`, {
    press: button(page, 'Hand back'),
    seen: [seenAt.getByText(/^Left by road on/)],
    gone: [floor.getByRole('link', { name: new RegExp(plate) })],
  });
  await page.getByRole('heading', { name: `What was done on ${plate}` }).waitFor();
  await page.getByText(`received by ${to.name}`, { exact: false }).waitFor();
}

/** By the other door, on a transporter, by the manager at the page of the job. */
export async function releaseOnTransporter(day: WholeDay, noor: Page, plate: string, seenAt: Page): Promise<void> {
  await toHandBack(noor, plate);
  await fillRelease(noor);
  await choose(noor, 'by road');
  assert.deepEqual((await refusedToLeave(noor, 'releaseUnfinished', 'Release unfinished')).sort(), [
    'handBack.doesNotRoll',
    'handBack.mayNotBeDriven',
  ]);
  await day.picture('release by road refused', noor);
  await release(day, noor, plate, seenAt);
}

const choose = (page: Page, name: string): Promise<void> =>
  page.getByRole('radio', { name, exact: true }).check({ force: true });

async function fillRelease(noor: Page): Promise<void> {
  await choose(noor, 'Released unfinished');
  await noor.getByLabel('Why it leaves unfinished').fill('To be sold as it is');
  await noor.getByLabel('By whom').fill('Gus Hale');
}

/** After the undo, by the same door. */
export async function releaseAgain(day: WholeDay, noor: Page, plate: string, seenAt: Page): Promise<void> {
  await fillRelease(noor);
  await release(day, noor, plate, seenAt);
}

async function release(day: WholeDay, noor: Page, plate: string, seenAt: Page): Promise<void> {
  const { floor } = day;
  await choose(noor, 'on a transporter');
  await day.act(`released unfinished: ${plate}`, {
    press: button(noor, 'Release unfinished'),
    seen: [seenAt.getByText(/^Left on a transporter on .*released unfinished: To be sold as it is/)],
    gone: [floor.locator('.hf-off-row').filter({ hasText: plate })],
  });
  await noor.getByRole('heading', { name: `Left unfinished: ${plate}` }).waitFor();
  await noor.getByText('Let go by Noor Castell.').waitFor();
}

export async function undo(day: WholeDay, noor: Page, seenAt: Page): Promise<void> {
  await button(noor, 'Undo the hand-back').click();
  await sheet(noor).getByLabel('Why').fill('The transporter is at the wrong gate');
  await day.act('release undone', {
    press: button(noor, 'Undo, and void the sheet'),
    seen: [seenAt.getByRole('main').getByText('The transporter is at the wrong gate')],
    gone: [seenAt.getByText(/^Left on a transporter on/)],
  });
  await noor.getByText(/The sheet of .* is void: The transporter is at the wrong gate/).waitFor();
}
