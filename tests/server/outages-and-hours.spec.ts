import { accountOfSpot, fromSnapshot, type Snapshot } from '@holdfast/board';
import { bayTimeView } from '@holdfast/contract';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { makeReads } from '../../apps/server/src/read/reads.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop } from '../kit/engine-shop.js';

const roundTheClock: [string, string][] = [['00:00', '24:00']];
const week = Object.fromEntries(
  ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((day) => [day, roundTheClock]),
) as Record<'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun', [string, string][]>;
const noBreaks = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };

// The shop is open round the clock, so that nothing here depends on when it runs.
describe('what is out of use, and other hours', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  let bayId = '';
  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app, { zone: 'UTC' });
    await shop.accept('setOpeningHours', { validFrom: '2020-01-01', week, breaks: noBreaks });
    const lift = [
      { kind: 'twoPostLift' as const, inUse: true, grips: 'points' as const },
      { kind: 'pit' as const, inUse: true, grips: null },
    ];
    bayId = (await shop.accept('addBay', { name: 'Lift', spots: 1, equipment: lift })).created['bay'] ?? '';
  });
  afterAll(() => db.drop());

  const now = async () => {
    const snapshot = JSON.parse((await makeReads(db.app).board(shop.shopId, 'staff')) ?? '{}') as Snapshot & {
      now: string;
    };
    return { board: fromSnapshot(snapshot, 'staff'), at: Date.parse(snapshot.now) };
  };
  const bayTime = async () => {
    const { at } = await now();
    const today = new Date(at).toISOString().slice(0, 10);
    return bayTimeView.parse(
      await makeReads(db.app).bayTime(shop.shopId, { from: today, to: today, segments: 'true' }),
    );
  };
  const outOfUse = async () =>
    ((await bayTime()).bays[0]?.spots[0]?.segments ?? [])
      .filter((segment) => segment.class === 'outOfUse')
      .map(({ from, to }) => [Date.parse(from), Date.parse(to)] as const);

  it('takes the time of a bay while its lift is out of use, and not while its pit is', async () => {
    const pit = await shop.accept('takeOutOfUse', { bayId, equipment: 'pit', words: 'Wet' });
    expect(await outOfUse()).toEqual([]);
    const lift = await shop.accept('takeOutOfUse', { bayId, equipment: 'twoPostLift', words: 'Leaks' });
    const out = await outOfUse();
    expect(out.map(([from]) => from)).toEqual([Date.parse(lift.at)]);
    const back = await shop.accept('putBackInUse', { outageId: lift.created['outage'] ?? '', version: 1 });
    expect(await outOfUse()).toEqual([[Date.parse(lift.at), Date.parse(back.at)]]);
    expect(pit.created['outage']).toBeDefined();
  });

  it('is drawn by the strip of a board as the account says it', async () => {
    const { board, at } = await now();
    const start = Date.parse(`${new Date(at).toISOString().slice(0, 10)}T00:00:00Z`);
    const account = accountOfSpot(board, bayId, 1, { from: start, to: at }, at);
    const drawn = account.segments.filter((one) => one.class === 'outOfUse').map(({ from, to }) => [from, to]);
    expect(drawn).toEqual(await outOfUse());
    expect(drawn).toHaveLength(1);
  });

  it('is a day on which the shop is closed, until the usual hours hold again', async () => {
    const { at } = await now();
    const today = new Date(at).toISOString().slice(0, 10);
    const closed = await shop.accept('setException', { day: today, hours: [] });
    expect((await bayTime()).open).toEqual([]);
    await shop.accept('endException', { exceptionId: closed.created['hoursException'] ?? '', version: 1 });
    expect((await bayTime()).open).toHaveLength(1);
  });

  it('is the hours of a person on one day, which a day’s load counts', async () => {
    const { at } = await now();
    const tomorrow = new Date(at + 86_400_000).toISOString().slice(0, 10);
    const person = await shop.accept('addPerson', { name: 'Tam', roles: ['technician'] });
    const minutes = async () => {
      const load = await makeReads(db.app).dayLoad(shop.shopId, { from: tomorrow, days: '1' });
      return load?.days[0]?.peopleMinutes;
    };
    expect(await minutes()).toBe(1440);
    const input = {
      day: tomorrow,
      personId: person.created['person'] ?? '',
      hours: [['08:00', '10:00']] as [string, string][],
    };
    await shop.accept('setException', input);
    expect(await minutes()).toBe(120);
  });

  it('is another zone from a day on', async () => {
    const { at } = await now();
    const today = new Date(at).toISOString().slice(0, 10);
    // Of the same time as UTC, so that today is the same day there.
    const zone = { validFrom: today, zone: 'Atlantic/Reykjavik' };
    await shop.accept('changeShop', { shopId: shop.shopId, version: 1, zone });
    expect((await bayTime()).zone).toBe('Atlantic/Reykjavik');
    await shop.accept('changeShop', { shopId: shop.shopId, version: 2, zone: { ...zone, zone: 'UTC' } });
    expect((await bayTime()).zone).toBe('UTC');
  });
});
