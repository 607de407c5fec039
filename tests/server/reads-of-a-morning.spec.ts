import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import {
  bayTimeView,
  changeLogPage,
  jobView,
  outstandingPage,
  partLinesPage,
  type BayTimeView,
  type BoardAnswer,
  type JobView,
  type OutstandingPage,
  type PartLinesPage,
} from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import { startApp, type TestApp, type TestShop } from '../kit/app.js';
import { aMorning, at, day, ids, problemOf, read } from './a-morning.js';

const minutes = (count: number) => count * 60_000;

let app: TestApp;
let shop: TestShop;

beforeAll(async () => {
  app = await startApp();
  shop = await app.newShop();
  await aMorning(shop);
});
afterAll(() => app.stop());

describe('a visit', () => {
  it('shows its lines with every answer, its holds with lines and parts, its parts with every date', async () => {
    const view: JobView = await read(shop.owner, `/api/jobs/${ids.job}`, jobView);
    expect(view.lines.map(({ title, goAheads }) => [title, goAheads.map(({ answer, how }) => [answer, how])])).toEqual([
      ['Fit a rear step bumper', [['given', 'telephone']]],
    ]);
    expect(view.holds.map(({ reason, partLineIds, toAt }) => [reason, partLineIds, toAt])).toEqual([
      ['parts', [ids.part], null],
    ]);
    expect(view.partLines.map(({ state, dueIns }) => [state, dueIns.map(({ dueOn }) => dueOn)])).toEqual([
      ['ordered', ['2030-04-02']],
    ]);
    expect(view.clocks.map(({ fromAt, toAt }) => [fromAt, toAt])).toEqual([[at('09:00'), at('10:00')]]);
    expect([view.customer?.name, view.contacts[0]?.phone, view.orders[0]?.reference]).toEqual([
      'Tamsin Okoro',
      '01632 960001',
      'HF-9',
    ]);
  });

  it('says what stands against its hand-back, in sentences, with the row where the way out is', async () => {
    const { blockers }: JobView = await read(shop.owner, `/api/jobs/${ids.job}`, jobView);
    const unfinished = blockers?.transporter.find(({ code }) => code === 'handBack.lineUnfinished');
    expect(unfinished?.way).toEqual({ table: 'workLine', id: ids.line });
    expect(unfinished?.sentence).toContain('Fit a rear step bumper');
    expect(blockers?.transporter.map(({ code }) => code)).toContain('handBack.concernOpen');
  });

  it('has its own log, newest first, without those of other visits', async () => {
    const { log }: JobView = await read(shop.owner, `/api/jobs/${ids.job}`, jobView);
    expect(log.map(({ command }) => command)).toEqual([
      'placeOrder',
      'openHold',
      'wantPart',
      'stopWork',
      'startWork',
      'takeIntoBay',
      'recordGoAhead',
      'addLine',
      'checkIn',
    ]);
    const page = await read(shop.owner, `/api/change-log?job=${ids.job}&limit=2`, changeLogPage);
    expect(page.items.map(({ command }) => command)).toEqual(['placeOrder', 'openHold']);
  });
});

describe('bay time', () => {
  it('puts every opening millisecond of the day so far into one class, to the millisecond', async () => {
    const view: BayTimeView = await read(shop.owner, `/api/bay-time?from=${day}&to=${day}&segments=true`, bayTimeView);
    // 08:00 waiting (a quarter of an hour of grace, then nobody said why), 09:00 worked, 10:00 grace and nobody said why
    // until 10:30, then held for the part until now, 12:00.
    expect(view.totals).toEqual({
      classMs: {
        outOfUse: 0,
        worked: minutes(60),
        stored: 0,
        held: minutes(90),
        noReason: minutes(60),
        break: minutes(30),
        empty: 0,
      },
      heldMs: { parts: minutes(90) },
      openMs: minutes(240),
      availableMs: minutes(240),
      occupiedMs: minutes(240),
      occupancy: 1,
      utilisation: 0.25,
      technicianMs: minutes(60),
      technicianOvertimeMs: 0,
    });
    expect(view.open).toEqual([[at('08:00'), at('17:00')]]);
    expect(view.bays[0]?.spots[0]?.segments?.map(({ class: kind, from }) => [kind, from.slice(11, 16)])).toEqual([
      ['break', '08:00'],
      ['noReason', '08:15'],
      ['worked', '09:00'],
      ['break', '10:00'],
      ['noReason', '10:15'],
      ['held', '10:30'],
    ]);
  });

  it('counts a bay from the day of its first facts on, and what lies ahead of now not at all', async () => {
    const before: BayTimeView = await read(shop.owner, '/api/bay-time?from=2030-03-01&to=2030-03-11', bayTimeView);
    expect([before.bays, before.totals.openMs]).toEqual([[], 0]);
    const ahead: BayTimeView = await read(shop.owner, '/api/bay-time?from=2030-03-14&to=2030-03-20', bayTimeView);
    expect([ahead.bays.length, ahead.totals.openMs, ahead.open.length]).toEqual([1, 0, 5]);
    const both: BayTimeView = await read(shop.owner, `/api/bay-time?from=2030-03-12&to=${day}`, bayTimeView);
    expect([both.totals.openMs, both.totals.classMs.empty]).toEqual([minutes(540 + 240), minutes(540)]);
  });

  it('takes at most 400 days, 31 with segments, and only days that exist in their order', async () => {
    const asked = [
      'from=2029-01-01&to=2030-03-13',
      'from=2030-03-13&to=2030-03-12',
      'from=2030-02-30&to=2030-03-12',
      'from=2030-03-13',
      'from=9999-12-31&to=9999-12-31',
      'from=0000-01-01&to=0000-01-02',
      `from=2030-01-01&to=${day}&segments=true`,
    ];
    for (const query of asked)
      expect([query, await problemOf(shop.owner, `/api/bay-time?${query}`)]).toEqual([query, [422, 'query.invalid']]);
    expect((await shop.owner.get(`/api/bay-time?from=2029-02-07&to=${day}`)).status).toBe(200);
  });
});

describe('parts', () => {
  it('come with the vehicle, the line, the order and the holds that wait for them since when', async () => {
    const { items }: PartLinesPage = await read(shop.owner, '/api/part-lines?state=ordered', partLinesPage);
    expect(
      items.map(({ plate, lineTitle, supplierName, orderReference, holds }) => [
        plate,
        lineTitle,
        supplierName,
        orderReference,
        holds,
      ]),
    ).toEqual([
      [
        'Ä-12 cd',
        'Fit a rear step bumper',
        'Harbour Factors',
        'HF-9',
        [{ holdId: ids.hold, jobId: ids.job, fromAt: at('10:30') }],
      ],
    ]);
    expect((await read(shop.owner, '/api/part-lines?state=wanted', partLinesPage)).items).toEqual([]);
  });
});

describe('outstanding', () => {
  it('is in the order of the first limit that has a day, those without one last, and pages through without gap', async () => {
    const { owner } = shop;
    const { created: seasons } = {
      created: ((await owner.get('/api/board')).json as BoardAnswer).rows['season'] ?? [],
    };
    const seasonId = seasons[0]?.id ?? '';
    const follow = (title: string, limits: object) =>
      owner.accepted('addFollowUp', { vehicleId: ids.vehicle, jobId: ids.job, kind: 'lookAgain', title, ...limits });
    await follow('by distance', { withinDistance: 500 });
    await follow('in ten days', { withinDays: 10 });
    await follow('before the salt', { seasonId });
    await follow('by a day', { beforeDay: '2030-03-20', beforeOdometer: 90_000 });
    await owner.accepted('addTemporaryFix', {
      jobId: ids.job,
      kind: 'heldBy',
      standsInFor: 'Bracket of the parking sensor',
      place: 'Rear left',
      heldWith: 'Two cable ties',
      system: 'body',
      endedByWhat: 'New bracket',
      withinDays: 30,
      beforeDay: '2030-05-01',
    });
    const whole: OutstandingPage = await read(owner, '/api/outstanding', outstandingPage);
    expect(whole.today).toBe(day);
    expect(
      whole.items.map(({ kind, firstLimit, undated }) => [kind, firstLimit?.day, firstLimit?.by, undated]),
    ).toEqual([
      ['followUp', '2030-03-20', 'beforeDay', ['beforeOdometer']],
      ['followUp', '2030-03-23', 'withinDays', []],
      ['temporaryFix', '2030-04-12', 'withinDays', []],
      ['followUp', '2030-11-01', 'season', []],
      ['followUp', undefined, undefined, ['withinDistance']],
    ]);
    const paged: unknown[] = [];
    let after = '';
    do {
      const page: OutstandingPage = await read(owner, `/api/outstanding?limit=2${after}`, outstandingPage);
      paged.push(...page.items);
      after = page.next === null ? '' : `&after=${encodeURIComponent(page.next)}`;
    } while (after !== '');
    expect(paged).toEqual(whole.items);
    expect((await read(owner, `/api/outstanding?vehicle=${randomUUID()}`, outstandingPage)).items).toEqual([]);
  });
});
