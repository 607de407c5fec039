import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop, vehicleAndBay } from '../kit/engine-shop.js';

// Visits of a hundred days ago that have ended: everything that a correction has to see must be loaded all the same.
const day = new Date(Date.now() - 100 * 86_400_000).toISOString().slice(0, 10);
const at = (time: string) => `${day}T${time}:00.000Z`;
const words = 'Looked at the paper';

describe('what is put right long after its visit has ended', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  const visits: Awaited<ReturnType<typeof visitOf>>[] = [];

  /** In the yard from 9, in its bay from 10 to 12 with a clock of the owner, and gone at 12. */
  async function visitOf(plate: string, clockFrom: string, clockTo: string) {
    const made = await vehicleAndBay(shop, plate);
    const { jobId, bayId, lineId } = made;
    const place = (await shop.accept('takeIntoBay', { jobId, bayId })).created['place'] ?? '';
    const hold = (await shop.accept('openHold', { jobId, reason: 'tool' })).created['hold'] ?? '';
    const clock = (await shop.accept('startWork', { lineId })).created['clock'] ?? '';
    await shop.accept('stopWork', { clockId: clock, version: 1 });
    await shop.accept('releaseUnfinished', {
      jobId,
      version: await version('job', jobId),
      leavesBy: 'transporter',
      receivedBy: 'Somebody',
      receivedHow: 'there',
      words: 'They want it now',
    });
    const set = (table: string, columns: string, where: string, ...values: string[]) =>
      db.superuser.query(`update "${table}" set ${columns} where ${where}`, values);
    await set('job', 'arrived_at = $1, checked_in_at = $1, ended_at = $2', 'id = $3', at('09:00'), at('12:00'), jobId);
    await set('place', 'from_at = $1, to_at = $2', `job_id = $3 and kind = 'yard'`, at('09:00'), at('10:00'), jobId);
    await set('place', 'from_at = $1, to_at = $2', `job_id = $3 and kind = 'bay'`, at('10:00'), at('12:00'), jobId);
    await set('spot_use', 'from_at = $1, to_at = $2', 'job_id = $3', at('10:00'), at('12:00'), jobId);
    await set('clock', 'from_at = $1, to_at = $2', 'job_id = $3', at(clockFrom), at(clockTo), jobId);
    await set('hold', 'from_at = $1, to_at = $2', 'job_id = $3', at('10:00'), at('11:00'), jobId);
    return { ...made, place, hold, clock };
  }

  async function version(table: string, id: string): Promise<number> {
    const { rows } = await db.superuser.query<{ version: number }>(`select version from "${table}" where id = $1`, [
      id,
    ]);
    return rows[0]?.version ?? 0;
  }

  const visit = (n: number) => {
    const found = visits[n];
    if (!found) throw new Error(`no visit ${String(n)}`);
    return found;
  };

  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
    visits.push(await visitOf('HB 1', '10:00', '11:00'), await visitOf('HB 2', '11:00', '12:00'));
  });
  afterAll(() => db.drop());

  it('knows the clocks that the person had then, on other visits too', async () => {
    const { clock } = visit(0);
    const longer = { clockId: clock, version: await version('clock', clock), toAt: at('11:01'), words };
    expect(await shop.refused('correctClock', longer)).toEqual(['time.onAnotherClock']);
    const answer = await shop.accept('correctClock', { ...longer, toAt: at('10:30') });
    const now = await db.superuser.query<{ void: boolean; to_at: number }>(
      'select void, to_at from clock where job_id = $1 order by void',
      [visit(0).jobId],
    );
    expect(now.rows).toEqual([
      { void: false, to_at: Date.parse(at('10:30')) },
      { void: true, to_at: Date.parse(at('11:00')) },
    ]);
    const { lineId } = visit(1);
    const missing = { personId: shop.ownerId, lineId, fromAt: at('10:29'), toAt: at('10:40'), words };
    expect(await shop.refused('addClock', missing)).toEqual(['time.onAnotherClock']);
    await shop.accept('addClock', { ...missing, fromAt: at('10:30') });
    expect(await shop.refused('takeBack', { seq: answer.seq })).toEqual(['change.clashes']);
  });

  it('knows who stood in the bay then', async () => {
    const [first, second] = [visit(0), visit(1)];
    const other = { placeId: first.place, version: await version('place', first.place), bayId: second.bayId, words };
    expect(await shop.refused('correctStay', other)).toEqual(['time.spotTaken']);
    const stay = { jobId: first.jobId, kind: 'bay', bayId: second.bayId, words } as const;
    expect(await shop.refused('addStay', { ...stay, fromAt: at('09:30'), toAt: at('10:01') })).toEqual([
      'time.spotTaken',
    ]);
    await shop.accept('addStay', { ...stay, fromAt: at('09:30'), toAt: at('10:00') });
    const later = { placeId: first.place, version: await version('place', first.place), fromAt: at('10:20'), words };
    expect(await shop.refused('correctStay', later)).toEqual(['time.spotTaken']);
    const answer = await shop.accept('correctStay', { ...later, fromAt: at('09:45') });
    await shop.accept('takeBack', { seq: answer.seq });
    const { rows } = await db.superuser.query<{ stood: string }>(
      `select format('%s %s-%s', case bay_id when $2 then 'own' else 'other' end, to_char(from_at at time zone 'UTC', 'HH24:MI'),
         to_char(to_at at time zone 'UTC', 'HH24:MI')) as stood from spot_use where job_id = $1 and not void order by from_at`,
      [first.jobId, first.bayId],
    );
    expect(rows.map(({ stood }) => stood)).toEqual(['other 09:30-10:00', 'own 10:00-12:00']);
  });

  it('knows where the person was recorded then', async () => {
    const here = { personId: shop.ownerId, kind: 'present', fromAt: at('08:00'), toAt: at('12:00'), words } as const;
    const attendanceId = (await shop.accept('addAttendance', here)).created['attendance'] ?? '';
    expect(
      await shop.refused('addAttendance', { ...here, kind: 'break', fromAt: at('11:59'), toAt: at('12:30') }),
    ).toEqual(['time.otherPresence']);
    const lunch = await shop.accept('addAttendance', {
      ...here,
      kind: 'break',
      fromAt: at('12:00'),
      toAt: at('12:30'),
    });
    expect(lunch.created['attendance']).toBeDefined();
    const longer = { attendanceId, version: 1, toAt: at('12:01'), words };
    expect(await shop.refused('correctAttendance', longer)).toEqual(['time.otherPresence']);
    const answer = await shop.accept('correctAttendance', { ...longer, fromAt: at('08:30'), toAt: at('11:30') });
    await shop.accept('takeBack', { seq: answer.seq });
    await shop.accept('strikeEntry', { table: 'attendance', id: attendanceId, words });
  });

  it('corrects and strikes holds and entries of visits that have ended, and not in a closed month', async () => {
    const { hold, jobId, clock } = visit(1);
    const answer = await shop.accept('correctHold', {
      holdId: hold,
      version: await version('hold', hold),
      reason: 'bay',
      words,
    });
    const stands = answer.created['hold'] ?? '';
    await shop.accept('strikeEntry', { table: 'hold', id: stands, words });
    expect(await shop.refused('strikeEntry', { table: 'place', id: visit(1).place, words })).toEqual([
      'entry.placeStays',
    ]);
    const { rows } = await db.superuser.query<{ id: string }>('select id from odometer_reading where job_id = $1', [
      jobId,
    ]);
    for (const { id } of rows) await shop.accept('strikeEntry', { table: 'odometerReading', id, words });
    const month = day.slice(0, 7);
    await shop.accept('closeMonth', { month });
    expect(await shop.refused('strikeEntry', { table: 'clock', id: clock, words })).toEqual(['time.monthClosed']);
    expect(await shop.refused('closeMonth', { month })).toEqual(['time.monthClosedAlready']);
    await shop.accept('reopenMonth', { month, words });
    await shop.accept('strikeEntry', { table: 'clock', id: clock, words });
    await shop.accept('closeMonth', { month });
  });

  it('keeps a report out of an outbox that comes after its month was closed, marked', async () => {
    const sent = {
      name: 'recordAttendance',
      input: { kind: 'present', at: Date.parse(at('13:00')) },
      key: randomUUID(),
      fingerprint: 'late',
      sentAt: null,
    } as const;
    const answer = await shop.run(shop.sender(shop.ownerId, ['owner']), sent);
    expect(answer).toMatchObject({ kind: 'accepted', body: expect.stringContaining('time.inClosedMonth') });
  });
});
