import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'playwright-core';
import { startApp, type TestApp } from '../kit/app.js';
import { openBrowser } from '../kit/browser.js';
import { button, toScreen } from './on-screen.js';
import { bays, earlierWork, jobBeside, openTernWharf, setUpTernWharf, type WholeDay } from './tern-wharf.js';
import * as bay from './whole-day-bay.js';
import * as desk from './whole-day-desk.js';
import * as leave from './whole-day-leave.js';
import * as road from './whole-day-road.js';

// The story of examples/the-whole-day.jsonl, worked by hand by a desk, a technician and a manager, each at windows of
// their own. After each act it is awaited where somebody else sits.
const look = 'Look for the hum';
const press = 'Press in a new bearing';
const hub = 'New hub with its bearing';
const pads = 'Renew the front pads';
const discs = 'Renew the front discs';
const trim = 'Refit the door and its trim';
const cable = 'Set the cable anew';
const axle = 'Free the rear axle';
const bend = 'Long right bend at 80 km/h, warm';

describe('the whole day by hand', () => {
  let app: TestApp;
  let browser: Browser;
  let day: WholeDay;
  /** The page of the visit that is worked on, at the technician and at the manager. */
  let lou: Page;
  let noor: Page;

  beforeAll(async () => {
    app = await startApp();
    const shop = await app.newShop('Tern Wharf Garage');
    await setUpTernWharf(shop);
    browser = await openBrowser();
    day = await openTernWharf(browser, app.url, shop);
  });
  afterAll(async () => {
    await browser.close();
    await app.stop();
  });

  const atTheBay = async (plate: string): Promise<void> => {
    lou = await bay.goTo(day, plate);
    const inSight = day.floor.getByRole('link', { name: new RegExp(plate) }).first();
    noor = await jobBeside(day.people.manager, inSight);
  };

  describe('an estate car that hums', () => {
    const plate = desk.estate.plate;

    it('is booked by telephone, arrives, and is checked in with a go-ahead in advance', async () => {
      await desk.bookEstate(day);
      await desk.estateArrives(day);
      await desk.checkInEstate(day);
    });

    it('is begun on that go-ahead, by the technician', async () => {
      await atTheBay(plate);
      await bay.answerFromStanding(lou, look, { at: noor, rests: 'looking for the fault' }, day);
      await bay.takeIntoBay(day, plate, bays.lift);
      await bay.start(day, look, bays.lift);
    });

    it('goes on a road test only off its stands; one of four attempts shows the concern', async () => {
      await road.roadTestRefusedOnStands(day, noor);
      await road.goesOnRoadTest(day, plate, '45010');
      await road.attempt(day, 'Town, 50 km/h, cold', false, noor);
      await road.attempt(day, 'Straight, 80 km/h, cold', false, noor);
      await road.attempt(day, bend, true, noor);
      await road.attempt(day, 'Long left bend at 80 km/h, warm', false, noor);
      await road.isBackFromRoadTest(day, plate, '45028');
      const tries = noor.getByRole('list', { name: 'Tries to make it appear' });
      expect(await tries.locator('strong').allInnerTexts()).toEqual([
        'did not appear',
        'did not appear',
        'appeared',
        'did not appear',
      ]);
      await day.bay.getByText('appeared in 1 of 4 tries').waitFor();
    });

    it('gets its cause, and two ways as a choice; one is given in a call that ends by its entry', async () => {
      await bay.causeAndFinding(day, noor);
      await bay.addLine(day, { title: press, hours: '1.5', price: '210' }, noor);
      await bay.addLine(day, { title: hub, hours: '0:50', price: '330' }, noor);
      await bay.makeChoice(day, lou, [press, hub], noor);
      await bay.finish(day, look, 'Rear left bearing', noor);
      await desk.callAboutTheTwoWays(day);
      await noor.getByText('telephone, Iris Holm: The new bearing, not the hub', { exact: false }).first().waitFor();
      await noor.getByRole('list', { name: `One of these: “${press}” is given` }).waitFor();
    });

    it('has a wheel off and on, and is no way on the road without its torque', async () => {
      await bay.start(day, press, bays.lift);
      await road.wheelOffAndOn(day, noor);
      await road.roadTestRefusedWithoutTorque(day);
      await road.torque(day, noor);
      await road.goesOnRoadTest(day, plate, '45028');
      await road.attempt(day, bend, false, noor);
      await road.isBackFromRoadTest(day, plate, '45050');
    });

    it('is handed back once it is told when to tighten the wheel again', async () => {
      await bay.finish(day, press, 'Quiet again', noor);
      await bay.outcome(day, lou, 'Hums at the rear', 'gone', noor);
      await bay.toYard(day, plate, 'Y1');
      await leave.fromTheDesk(day, plate);
      expect(await leave.refusedToLeave(day.desk, 'handBack', 'Hand back')).toEqual(['handBack.retorqueUntold']);
      await leave.tellRetorque(day, noor);
      await leave.handBack(day, plate, { name: 'Iris Holm' }, noor);
      await day.desk.getByText('Tighten the rear left wheel again', { exact: false }).first().waitFor();
    });
  });

  describe('the van of a fleet', () => {
    const plate = desk.van.plate;

    it('is checked in with its limit; what goes beyond it is refused with what is left', async () => {
      await desk.checkInVan(day);
      await atTheBay(plate);
      await bay.addLine(day, { title: pads, hours: '1', price: '320' }, noor);
      await bay.addLine(day, { title: trim, hours: '1.5', price: '140' }, noor);
      await bay.addLine(day, { title: discs, hours: '0:40', price: '260' }, noor);
      await bay.answerFromStanding(lou, pads, { at: noor, rests: 'fleet limit' }, day);
      await bay.refusedBeyondTheLimit(
        day,
        lou,
        discs,
        'This line costs £260.00 and £180.00 is left under the standing go-ahead. Ask the customer for it.',
      );
      await bay.answerFromStanding(lou, trim, { at: noor, rests: 'fleet limit' }, day);
      await noor.getByText('fleet limit, up to £500.00: £460.00 used, £40.00 left').waitFor();
    });

    it('keeps its bay while its door is at the painter, and glass comes to it', async () => {
      await bay.pickAndPlace(day, plate, bays.bench);
      await bay.finish(day, pads, 'New pads, bedded in', noor);
      await desk.doorGoesToPaint(day, noor);
      await desk.outsiderComesAndGoes(day, noor);
      await desk.doorIsBack(day, noor);
      await desk.putOff(day, discs, 'Mila Voss', noor);
    });

    it('is left half done: handed over, carried over, handed back', async () => {
      await bay.start(day, trim, bays.bench);
      await bay.stopWithHandover(day, noor);
      await bay.start(day, trim, bays.bench, 'Door hangs, lower trim loose in the cab');
      await bay.carryOver(day, lou, trim, noor);
      await bay.outcome(day, lou, 'Pulls when braking', 'gone', noor);
      await bay.outcome(day, lou, 'Rear door scraped at a dock', 'gone', noor);
      await leave.fromTheDesk(day, plate);
      await leave.handBack(day, plate, { name: 'Mila Voss' }, noor);
    });
  });

  it('a comeback is recognised by the earlier work, paid by the shop, and received by telephone', async () => {
    await earlierWork(day.shop);
    await desk.checkInComeback(day);
    await atTheBay('TW 88');
    await bay.addLine(day, { title: cable, hours: '0:20' }, noor);
    await bay.givenByTheShop(day, noor, cable);
    await bay.takeIntoBay(day, 'TW 88', bays.gate);
    await bay.start(day, cable, bays.gate);
    await bay.finish(day, cable, 'Both sides pull alike', noor);
    await bay.outcome(day, lou, 'Lever comes up too far again', 'gone', noor);
    await leave.fromTheDesk(day, 'TW 88');
    await leave.handBack(day, 'TW 88', { name: 'Sol Abery', how: 'by telephone' }, noor);
  });

  describe('a pick-up that does not roll', () => {
    const plate = desk.pickUp.plate;

    it('is begun, the word is taken back, what was done is put back and charged', async () => {
      await desk.checkInPickUp(day);
      await atTheBay(plate);
      await bay.addLine(day, { title: axle, hours: '2', price: '300' }, noor);
      await desk.givenAtTheDesk(day, axle);
      await bay.startInTheYard(day, axle);
      await desk.takenBack(day, axle);
      await bay.putBackAndCharge(day, lou, axle, noor);
    });

    it('is released unfinished on a transporter with its own sheet, undone, and released again', async () => {
      await leave.releaseOnTransporter(day, noor, plate, lou);
      await leave.undo(day, noor, lou);
      await leave.releaseAgain(day, noor, plate, lou);
      const sheets = noor.getByRole('radiogroup', { name: 'Which sheet' }).getByRole('radio');
      expect(await sheets.count()).toBe(2);
      await button(noor, 'Print the sheet').waitFor();
    });
  });

  it('leaves an empty yard, what is outstanding, and no complaint of any window', async () => {
    await day.floor.getByText('The yard is empty.').waitFor();
    await toScreen(day.desk, 'Outstanding').click();
    for (const title of ['Tighten the rear left wheel again', trim])
      await day.desk.getByText(title, { exact: false }).first().waitFor();
    await day.picture('what is outstanding at the end', day.desk);
    expect(Object.values(day.people).flatMap(({ complaints }) => complaints)).toEqual([]);
  });
});
