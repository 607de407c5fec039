/** What the technician does on the whole day, by hand, on a tablet. */
import type { Page } from 'playwright-core';
import { bayRow, button, choose, row, sheet } from './on-screen.js';
import { names, type WholeDay } from './tern-wharf.js';

/** The large buttons of My bay. */
const acts = (page: Page) =>
  page.getByRole('region', { name: /^(The work|What you see and try|What others have to mind|Where it goes)$/ });
export const open = (page: Page, name: string): Promise<void> => button(acts(page), name).click();

export async function answerFromStanding(
  lou: Page,
  title: string,
  seen: { readonly at: Page; readonly rests: string },
  { act }: WholeDay,
): Promise<void> {
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

/** A vehicle that does not roll is worked on where it stands. */
export async function startInTheYard(day: WholeDay, title: string): Promise<void> {
  const { bay: page, floor } = day;
  await open(page, 'Start');
  await day.act(`started in the yard: ${title}`, {
    press: button(sheet(page), `Start “${title}”`),
    seen: [floor.locator('.hf-off-row').getByText(`worked on by ${names.technician}`)],
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

export async function addLine(
  day: WholeDay,
  line: { readonly title: string; readonly hours: string; readonly price?: string },
  seenAt: Page,
): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Another line');
  await sheet(page).getByLabel('What is to be done').fill(line.title);
  await sheet(page).getByLabel('Book hours').fill(line.hours);
  if (line.price !== undefined)
    await sheet(page)
      .getByLabel(/^Price/)
      .fill(line.price);
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

/** Stops with what is loose; it is shown in full at the next start. */
export async function stopWithHandover(day: WholeDay, seenAt: Page): Promise<void> {
  const { bay: page } = day;
  await open(page, 'Stop');
  await sheet(page).getByLabel('Loose, open or next').fill('Door hangs, lower trim loose in the cab');
  await day.act('stopped, with what is loose', {
    press: button(page, 'Stop the clock'),
    seen: [row(seenAt, 'workLine', 'Handed over: Door hangs, lower trim loose in the cab')],
  });
}

/** Half done, at the page of the job: the clock stops, and the rest becomes a follow-up with its hours. */
export async function carryOver(day: WholeDay, lou: Page, title: string, seenAt: Page): Promise<void> {
  await button(lou, `More: ${title}`).click();
  await button(lou, `Carry over: ${title}`).click();
  await sheet(lou).getByLabel('What was done').fill('Door hung and aligned');
  await sheet(lou).getByLabel('What remains').fill('Lower trim');
  await sheet(lou).getByLabel('Hours that remain').fill('0:40');
  await sheet(lou).getByLabel('Within days').fill('30');
  await day.act('carried over, half done', {
    press: button(lou, 'Carry it over'),
    seen: [
      row(seenAt, 'workLine', title)
        .getByText(/^carried over/)
        .first(),
      row(seenAt, 'followUp', 'Lower trim').filter({ hasText: '40 min' }),
    ],
    gone: [day.floor.getByText(/worked on by/)],
  });
}

/** More than is left under the fleet's limit: refused, with what is left. */
export async function refusedBeyondTheLimit(day: WholeDay, lou: Page, title: string, sentence: string): Promise<void> {
  await button(lou, `Answer: ${title}`).click();
  await choose(lou, 'standing go-ahead');
  await button(lou, 'Record the answer').click();
  await sheet(lou).getByRole('alert').getByText(sentence).waitFor();
  await day.picture('a line beyond the fleet limit refused', lou);
  await lou.keyboard.press('Escape');
  await row(lou, 'workLine', title).getByText('with the customer').first().waitFor();
}

/** The technician's screen goes to another vehicle that is here; its page of the job is opened beside. */
export async function goTo({ bay: page, people }: WholeDay, plate: string): Promise<Page> {
  await page
    .getByText('Which vehicle?')
    .or(button(page, 'Another vehicle'))
    .or(button(page, 'Back to mine'))
    .first()
    .waitFor();
  for (const name of ['Back to mine', 'Another vehicle'])
    if ((await button(page, name).count()) > 0) await button(page, name).click();
  await button(page, new RegExp(`^${plate},`)).click();
  return people.technician.beside(page.getByRole('link', { name: /^Job \d+$/ }));
}

/** At the manager's Floor: picked, then placed. */
export async function pickAndPlace({ floor: page, bay, act }: WholeDay, plate: string, into: string): Promise<void> {
  await button(page, `Pick ${plate}`).click();
  await act(`${plate} picked and placed`, {
    press: button(page, new RegExp(`^Place in ${into}`)),
    seen: [bay.getByText(`in ${into}`).first()],
  });
}

/** The shop pays for a comeback; only a manager says so. */
export async function givenByTheShop(day: WholeDay, noor: Page, title: string): Promise<void> {
  await button(noor, `Answer: ${title}`).click();
  await choose(noor, 'by the shop itself');
  await day.act('given by the shop', {
    press: button(noor, 'Record the answer'),
    seen: [row(day.bay, 'workLine', title).filter({ hasText: 'go-ahead given' })],
  });
}

export async function putBackAndCharge(day: WholeDay, lou: Page, title: string, seenAt: Page): Promise<void> {
  await button(lou, `Put back, charge: ${title}`).click();
  await sheet(lou).getByLabel('What was done, and that it is put back').fill('Put together as it came');
  await sheet(lou)
    .getByLabel(/^Charged for what was done/)
    .fill('45');
  await day.act('put back and charged', {
    press: button(lou, 'End the line'),
    seen: [row(seenAt, 'workLine', title).getByText(/charged £45/)],
  });
}
