/** The story goes on: who is here, and what was recorded wrong and is put right, in the visit of ./every-command-of-the-day. */
import type { Told } from './told.js';

const thisMonth = () => new Date().toISOString().slice(0, 7);
/** A month that is over in every zone. */
const monthOver = '2026-01';

export async function commandsOfTime(told: Told, jobId: string, lineId: string): Promise<void> {
  if (thisMonth() <= monthOver) throw new Error('the month of the story is not over');
  const { go, made, version, technician, tech } = told;
  const came = await made('recordAttendance', 'attendance', { kind: 'present' }, technician);
  const swept = { kind: 'shopTime', words: 'Swept' } as const;
  const shopTime = await made('recordAttendance', 'attendance', swept, technician);
  if (came === shopTime) throw new Error('one stretch for two');
  await go('recordAttendance', { kind: 'gone' }, technician);
  await go('correctAttendance', {
    attendanceId: shopTime,
    version: await version('attendance', shopTime),
    kind: 'break',
    words: 'It was the break',
  });
  await go('addAttendance', {
    personId: tech,
    kind: 'present',
    fromAt: '2026-02-03T09:00:00.000Z',
    toAt: '2026-02-03T12:00:00.000Z',
    words: 'Forgot to say',
  });
  const clockId = await made('addClock', 'clock', {
    personId: tech,
    lineId,
    fromAt: '2026-02-03T09:00:00.000Z',
    toAt: '2026-02-03T10:00:00.000Z',
    words: 'Worked before the van came in',
  });
  await go('correctClock', {
    clockId,
    version: await version('clock', clockId),
    toAt: '2026-02-03T10:30:00.000Z',
    bench: true,
    words: 'Half an hour longer',
  });
  const hold = await made('openHold', 'hold', { jobId, reason: 'tool', words: 'Puller is lent' }, technician);
  await go('correctHold', { holdId: hold, version: await version('hold', hold), reason: 'bay', words: 'No bay free' });
  await staysPutRight(told, jobId);
  await go('closeMonth', { month: monthOver, words: 'Counted' });
  await go('reopenMonth', { month: monthOver, words: 'One clock is missing' });
  const wrong = await made('addFinding', 'finding', { jobId, place: 'Bonnet', kind: 'fault' }, technician);
  await go('strikeEntry', { table: 'finding', id: wrong, words: 'Another vehicle' });
  const again = await go('correctHold', { ...(await lastHold(told)), reason: 'technician', words: 'Nobody free' });
  await go('takeBack', { seq: again.seq });
}

async function lastHold({ idsOf, version }: Told) {
  const [holdId = ''] = await idsOf('hold');
  return { holdId, version: await version('hold', holdId) };
}

/** The job came in a moment ago and moved since: it is in its second place, which began a little later than was said. */
async function staysPutRight({ go, made, version }: Told, jobId: string) {
  const placeId = await made('moveToYard', 'place', { jobId, yardSpot: 'Y9' });
  await new Promise((resolve) => setTimeout(resolve, 20));
  const fromAt = new Date(Date.now() - 5).toISOString();
  const corrected = await go('correctStay', {
    placeId,
    version: await version('place', placeId),
    fromAt,
    words: 'It stood in the bay until then',
  });
  if (!corrected.created['place']) throw new Error('the stay that stands has no id');
  const toAt = new Date().toISOString();
  await go('addStay', { jobId, kind: 'yard', yardSpot: 'Y10', fromAt, toAt, words: 'At the fence first' });
}
