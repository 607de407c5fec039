import { beforeAll, describe, expect, it } from '@jest/globals';
import { createHash } from 'node:crypto';
import { passwordProblem } from '../../apps/server/src/auth/password-rules.js';
import { demoPassword, demoShop, owner } from '../../apps/server/src/demo/cast.js';
import { inventShop, type Invention } from '../../apps/server/src/demo/invent.js';
import { demoDay } from '../../apps/server/src/demo/load-demo.js';
import { isReady, openJobOf, placeOf, Rows, tierOf, wheelsOff, wheelsUntorqued } from '../../libs/domain/src/index.js';

const seed = 20_261;
const today = '2026-11-25';

describe('the invented shop', () => {
  let shop: Invention;
  beforeAll(() => {
    const began = performance.now();
    shop = inventShop(seed, today);
    console.info(`invented in ${Math.round(performance.now() - began)} ms: ${shop.ledger.changes.length} changes`);
  });
  const rows = () => shop.ledger.atHand;
  const here = () => rows().list('job', (job) => job.endedAt === null);
  const standing = () => rows().list('spotUse', (use) => use.toAt === null);

  it('is the same for one seed and one day, and another one for another seed', () => {
    const digest = ({ ledger }: Invention) =>
      createHash('sha256')
        .update(JSON.stringify([ledger.all(), ledger.changes]))
        .digest('hex');
    expect(digest(inventShop(seed, today))).toBe(digest(shop));
    expect(digest(inventShop(seed + 1, today))).not.toBe(digest(shop));
  });

  // The rules refuse nothing on these days either: summer and winter, clocks that change, a new year, a Monday.
  it.each(['2027-01-04', '2027-03-30', '2026-11-26', '2027-04-02', '2026-10-26'])(
    'is accepted whole by the rules on %s, with the same morning',
    (day) => {
      const other = inventShop(seed, day).ledger.atHand;
      expect(other.list('job', (job) => job.endedAt === null)).toHaveLength(here().length);
      expect(other.list('spotUse', (use) => use.toAt === null)).toHaveLength(standing().length);
    },
  );

  it('is numbered without gaps, in the order of its times, over three months', () => {
    const { changes } = shop.ledger;
    expect(changes.map(({ seq }) => seq)).toEqual(changes.map((_, at) => at + 1));
    expect(changes.every((change, at) => change.recordedAt > (changes[at - 1]?.recordedAt ?? 0))).toBe(true);
    expect((shop.now - (changes[0]?.recordedAt ?? 0)) / 86_400_000).toBeGreaterThan(90);
    expect(changes.at(-1)?.recordedAt).toBeLessThanOrEqual(shop.now);
  });

  it('shows a morning with work, waits of several reasons, a bay without a reason and an empty one', () => {
    const running = rows().list('clock', (clock) => clock.toAt === null);
    expect(running.filter(({ bench }) => bench)).toHaveLength(1);
    expect(running.filter(({ bench }) => !bench)).toHaveLength(2);
    expect(
      new Set(
        rows()
          .list('hold', (hold) => hold.toAt === null)
          .map(({ reason }) => reason),
      ),
    ).toEqual(new Set(['parts', 'goAhead', 'collection', 'information', 'sublet']));
    expect(new Set(standing().map((use) => rows().get('bay', use.bayId).name))).toEqual(
      new Set(['North lift', 'South lift', 'Long lift', 'Floor by the gate', 'Floor by the quay']),
    );
    expect(here().filter((job) => placeOf(rows(), job.id)?.kind === 'yard').length).toBeGreaterThanOrEqual(8);
  });

  it('shows one contested card, tags and cautions, a promise that is late, parts that are late and parts that came', () => {
    expect(rows().list('report', (report) => report.state === 'contested')).toHaveLength(1);
    const cautions = rows()
      .list('caution', (one) => one.endedAt === null)
      .map(({ code }) => code);
    expect(cautions).toEqual(expect.arrayContaining(['brakesOpen', 'highVoltageDead', 'electricDrive', 'doNotStart']));
    expect(here().filter((job) => job.promisedAt !== null && job.promisedAt < shop.now).length).toBeGreaterThanOrEqual(
      1,
    );
    const parts = rows().list('partLine', (part) => here().some((job) => job.id === part.jobId));
    expect(parts.filter((part) => part.state === 'ordered' && (part.dueOn ?? today) < today)).toHaveLength(1);
    expect(parts.filter((part) => part.state === 'arrived')).toHaveLength(1);
  });

  it('tells of the van: three fixes of tier 2 with second checks and follow-ups, and the salt season before the lens', () => {
    const van = standing().find((use) => rows().get('bay', use.bayId).name === 'South lift');
    const fixes = rows().list('temporaryFix', (fix) => fix.vehicleId === van?.vehicleId);
    expect(fixes.map(({ kind }) => kind)).toEqual(['leftOff', 'heldBy', 'leftOpen']);
    for (const fix of fixes) {
      expect(tierOf(fix.system)).toBe(2);
      expect(rows().list('secondCheck', (check) => check.temporaryFixId === fix.id)).toHaveLength(1);
      expect(rows().get('followUp', fix.followUpId ?? '').state).toBe('open');
    }
    const season = rows().get('season', fixes[2]?.seasonId ?? '');
    const lens = rows().list(
      'partLine',
      (part) => part.vehicleId === van?.vehicleId && part.description.startsWith('Lens'),
    )[0];
    expect(lens?.dueOn?.slice(5).localeCompare(season.fromDay)).toBe(1);
    const unended = new Set(
      rows()
        .list('temporaryFix', (fix) => fix.state !== 'ended')
        .map(({ vehicleId }) => vehicleId),
    );
    const checkedIn = here().filter((job) => job.checkedInAt !== null);
    expect(checkedIn.filter((job) => unended.has(job.vehicleId))).toHaveLength(3);
  });

  const sorted = (list: readonly string[]) => [...list].sort();
  const kindOfPlace = (jobId: string) => placeOf(rows(), jobId)?.kind;
  const sublets = () => rows().list('sublet', (one) => one.state === 'underWay');

  it('expects five: one late, one this afternoon, two later, and one that stands here and nobody has checked in', () => {
    const expected = here().filter((job) => job.checkedInAt === null);
    const days = expected.map((job) => new Date(job.expectedAt ?? 0).toISOString().slice(0, 10));
    expect(sorted(days)).toEqual([today, today, today, '2026-11-26', '2026-11-27']);
    const arrived = expected.filter((job) => job.arrivedAt !== null);
    expect(arrived.map((job) => [job.keyTag, kindOfPlace(job.id)])).toEqual([['Box 2', 'yard']]);
    const late = expected.filter((job) => job.arrivedAt === null && (job.expectedAt ?? 0) < shop.now);
    expect(late.map((job) => job.waitsHere)).toEqual([true]);
  });

  it('has a call to make of each reason that rows bring about, one of them tried and named for later', () => {
    const calls = rows().list('call', (call) => call.endedAt === null);
    expect(new Set(calls.map(({ reason }) => reason))).toEqual(new Set(['goAhead', 'ready', 'partsIn']));
    const again = calls.filter((call) => (call.nextTryAt ?? 0) > shop.now);
    expect(again.map(({ reason }) => reason)).toEqual(['ready']);
    const gone = calls.filter(({ reason }) => reason === 'partsIn').map(({ vehicleId }) => vehicleId);
    expect(gone.map((vehicleId) => openJobOf(rows(), vehicleId))).toEqual([undefined]);
  });

  it('has one on the road with its spot kept, one at another firm, and a piece at the painter of one that keeps its bay', () => {
    const [onRoad] = here().filter((job) => kindOfPlace(job.id) === 'roadTest');
    expect(placeOf(rows(), onRoad?.id ?? '')?.dueBackAt).toBeGreaterThan(shop.now);
    const kept = standing().filter((use) => use.kind === 'kept');
    expect(kept.map((use) => use.jobId)).toEqual([onRoad?.id]);
    const tries = rows().list('attempt', (one) => one.jobId === onRoad?.id);
    expect(tries.map((one) => one.appeared)).toEqual([true, false]);
    const [away] = here().filter((job) => kindOfPlace(job.id) === 'away');
    expect(placeOf(rows(), away?.id ?? '')?.dueBackAt).toBeGreaterThan(shop.now);
    expect(sorted(sublets().map(({ form }) => form))).toEqual(['componentOut', 'vehicleOut']);
    const atPainter = sublets().find(({ form }) => form === 'componentOut');
    expect(atPainter?.component).toBeTruthy();
    expect(standing().find((use) => use.jobId === atPainter?.jobId)?.kind).toBe('stands');
  });

  it('has two wheels off, four on and not tightened, high voltage live, and hot work in a bay next to another', () => {
    const off = here().flatMap((job) => wheelsOff(rows(), job.id));
    expect(off.map(({ position }) => position)).toEqual(['1L', '1R']);
    const loose = here().flatMap((job) => wheelsUntorqued(rows(), job.id));
    expect(loose.map(({ position }) => position)).toEqual(['1L', '1R', '2L', '2R']);
    const bayOf = (code: string) => {
      const caution = rows().list('caution', (one) => one.endedAt === null && one.code === code)[0];
      const use = standing().find((one) => one.jobId === caution?.jobId);
      return use && rows().get('bay', use.bayId);
    };
    const [hot, live] = [bayOf('hotWork'), bayOf('highVoltageLive')];
    expect(live?.name).toBe('Floor by the quay');
    expect(Math.abs((hot?.position ?? 0) - (live?.position ?? 0))).toBe(1);
  });

  it('has a question open, a comeback, two ready ones, one that waits in the room, a choice of two, a standing go-ahead used in part', () => {
    const asked = rows().list('question', (one) => one.answeredAt === null);
    expect(asked.map(({ toId }) => rows().get('person', toId).name)).toEqual(['Henrik Stowe']);
    const onPremises = here().filter((job) => job.arrivedAt !== null);
    const comebacks = onPremises.filter((job) => job.kind === 'comeback');
    expect(comebacks.map((job) => [job.comebackOfLineId !== null, job.waitsHere])).toEqual([[true, true]]);
    const reported = (job: { id: string }) =>
      rows().list('concern', (one) => one.jobId === job.id && one.outcome !== null);
    expect(onPremises.filter((job) => isReady(rows(), job.id) && reported(job).length > 0)).toHaveLength(2);
    const lines = rows().list('workLine', (line) => onPremises.some((job) => job.id === line.jobId));
    const choice = lines.filter((line) => line.choiceId !== null);
    expect(choice.map(({ goAhead }) => goAhead)).toEqual(['withCustomer', 'withCustomer']);
    expect(new Set(choice.map(({ choiceId }) => choiceId)).size).toBe(1);
    const [limit] = rows().list('standingGoAhead', (one) => one.endedAt === null && one.orderNumber !== null);
    const used = onPremises.map((job) =>
      lines.filter((line) => line.jobId === job.id && line.standingId === limit?.id),
    );
    const totals = used
      .filter((list) => list.length > 0)
      .map((list) => list.reduce((sum, { price }) => sum + Number(price), 0));
    expect(totals.length).toBeGreaterThanOrEqual(3);
    for (const total of totals) expect(total).toBeLessThan(Number(limit?.upTo));
  });

  it('has a past of the whole day: attempts, causes, road tests, sublets, wheels, standing go-aheads, the contact log', () => {
    const all = Rows.of(shop.ledger.all());
    const tried = new Set(all.list('attempt').map(({ concernId }) => concernId));
    expect(all.list('concern', (one) => one.outcome === 'gone' && tried.has(one.id)).length).toBeGreaterThan(50);
    expect(new Set(all.list('cause').map(({ certainty }) => certainty))).toEqual(new Set(['found', 'likely']));
    expect(all.list('place', (one) => one.kind === 'roadTest' && one.odometerIn !== null).length).toBeGreaterThan(20);
    expect(all.list('spotUse', (one) => one.kind === 'kept' && one.toAt !== null).length).toBeGreaterThan(20);
    const over = all.list('sublet', (one) => one.state === 'ended');
    expect(sorted(over.map(({ form }) => form))).toEqual(['componentOut', 'outsiderIn', 'vehicleOut']);
    const wheels = all.list('wheelRecord', (one) => one.torquedAt !== null);
    expect(wheels.length).toBeGreaterThan(40);
    expect(wheels.every((one) => one.torque !== null && one.torqueSource !== null && one.tool !== null)).toBe(true);
    const retorques = all.list('followUp', (one) => one.kind === 'retorque');
    expect(new Set(retorques.map(({ state }) => state))).toEqual(new Set(['open', 'done']));
    expect(all.list('workLine', (line) => line.standingId !== null).length).toBeGreaterThan(10);
    expect(new Set(all.list('call').map(({ endedHow }) => endedHow))).toEqual(
      new Set([null, 'logged', 'noLongerNeeded']),
    );
    expect(all.list('contactEntry', (one) => !one.reached && one.nextTryAt !== null).length).toBeGreaterThan(5);
    expect(all.list('odometerReading', (one) => one.jobId === null && one.source === 'told').length).toBeGreaterThan(1);
    expect(all.list('contact', (one) => one.mayAgreeUpTo !== null).length).toBeGreaterThan(10);
    expect(
      all.list('flag', (one) => one.rule !== 'place.loadNotAsked' && one.clearedAt === null).map(({ rule }) => rule),
    ).toEqual([]);
  });

  it('has a past of every kind: slipped, partial, damaged and wrong deliveries, comebacks, put-off work, mended fixes', () => {
    const all = Rows.of(shop.ledger.all());
    expect(new Set(all.list('arrival').map(({ verdict }) => verdict))).toEqual(new Set(['good', 'damaged', 'wrong']));
    expect(all.list('dueIn', (due) => due.ordinal > 1).length).toBeGreaterThan(10);
    expect(all.list('job', (job) => job.kind === 'comeback').length).toBeGreaterThan(2);
    expect(all.list('followUp', (one) => one.kind === 'deferred').length).toBeGreaterThan(5);
    expect(all.list('temporaryFix', (fix) => fix.endedHow === 'repaired').length).toBeGreaterThan(3);
    expect(all.list('sheet').length).toBeGreaterThan(300);
  });

  it('takes the last day that the shop was open where today it is closed', () => {
    expect(demoDay(Date.parse('2026-11-28T12:00:00Z'))).toBe('2026-11-27');
    expect(demoDay(Date.parse('2026-11-25T12:00:00Z'))).toBe('2026-11-25');
  });

  it('has a password that the rules for passwords take', () => {
    expect(passwordProblem(demoPassword, [demoShop.name, owner.name])).toBeNull();
  });
});
