import { describe, expect, it } from '@jest/globals';
import type { AddCaution, AddFinding, AttachPhoto, EndCaution, RecordConcernOutcome } from '../inputs.js';
import { type Given, given, hour, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import type { Role } from '../tables/words.js';
import { addCaution, endCaution } from './cautions.js';
import { addFinding, attachPhoto } from './findings-and-photos.js';
import { recordConcernOutcome } from './record-concern-outcome.js';

const here = () => given().shop().vehicle('v0').job('j0').line('l0', { progress: 'done' }).vehicle('v1').job('j1');
const over = () => here().but('job', 'j1', { endedAt: tuesdayTen - hour });

describe('the outcome of a concern', () => {
  const say = (input: Partial<RecordConcernOutcome>, story: Given = here().concern('s1')) =>
    carryOut(recordConcernOutcome, story.rows(), { concernId: 's1', outcome: 'gone', ...input });

  it('gone is gone under the conditions that had shown it', () => {
    expect(say({}).codes).toEqual(['concern.conditionsMissing']);
    expect(say({ words: 'Looks fine' }).codes).toEqual(['concern.conditionsMissing']);
    const { rows } = say({ conditions: 'cold, over kerbs' });
    expect(rows.get('concern', 's1')).toMatchObject({
      outcome: 'gone',
      outcomeConditions: 'cold, over kerbs',
      outcomeAt: tuesdayTen,
      outcomeById: 'manager',
    });
  });
  it('takes the conditions that the customer gave where nobody says others', () => {
    const { rows } = say({}, here().concern('s1', { conditions: 'when cold' }));
    expect(rows.get('concern', 's1').outcomeConditions).toBe('when cold');
  });
  it('still there says how; not tried says why', () => {
    expect(say({ outcome: 'stillThere' }).codes).toEqual(['concern.wordsMissing']);
    expect(say({ outcome: 'stillThere', words: 'at 60 km/h' }).codes).toEqual([]);
    expect(say({ outcome: 'notTried', conditions: 'any' }).codes).toEqual(['concern.wordsMissing']);
    expect(say({ outcome: 'notTried' }, here().concern('s1', { conditions: 'cold' })).codes).toEqual([
      'concern.wordsMissing',
    ]);
  });
  it('is not said of a job that is over, nor of a concern that is not there', () => {
    expect(say({ outcome: 'stillThere', words: 'Still' }, over().concern('s1')).codes).toEqual(['job.ended']);
    expect(say({ concernId: 's9' }).codes).toEqual(['row.notFound']);
  });
});

describe('a caution', () => {
  const warn = (input: Partial<AddCaution>, story: Given = here(), by: Role = 'technician') =>
    carryOut(addCaution, story.rows(), { vehicleId: 'v1', standing: false, code: 'fuelOpen', ...input }, { by });

  it.each(['owner', 'manager', 'desk', 'technician', 'partsClerk'] as const)('is put there by %s', (by) => {
    const { rows, outcome } = warn({}, here(), by);
    const caution = rows.get('caution', outcome?.created?.['caution'] ?? '');
    expect(caution).toMatchObject({ openedById: by, jobId: 'j1', standing: false, endedAt: null });
  });
  it('that is a working one belongs to a visit, a standing one to the vehicle', () => {
    expect(warn({}, over()).codes).toEqual(['caution.noVisit']);
    expect(warn({ jobId: 'j1' }, over()).codes).toEqual([]);
    expect(warn({ standing: true, code: 'liftingPoint' }, over()).rows.list('caution')[0]?.jobId).toBeNull();
  });
  it('names what is there: its own id once, this vehicle’s job, a person, words for "other"', () => {
    expect(warn({ cautionId: 'x' }, here().caution('x')).codes).toEqual(['caution.alreadyThere']);
    expect(warn({ jobId: 'j0' }).codes).toEqual(['caution.jobOfOtherVehicle']);
    expect(warn({ vehicleId: 'v9' }).codes).toEqual(['row.notFound']);
    expect(warn({ secondId: 'nobody' }).codes).toEqual(['row.notFound']);
    expect(warn({ code: 'other' }).codes).toEqual(['caution.saySomething']);
  });

  const end = (by: Role | 'second', story: Given, input: Partial<EndCaution> = {}) => {
    const who = by === 'second' ? { personId: 'second', name: 'S', roles: ['technician'] as const } : by;
    return carryOut(endCaution, story.rows(), { cautionId: 'x', ...input }, { by: who });
  };
  const working = () => here().caution('x', { openedById: 'technician', secondId: 'desk' });
  it.each(['technician', 'desk', 'manager', 'owner'] as const)(
    'that is a working one is ended by who opened it, the person named, manager or owner: %s',
    (by) => {
      expect(end(by, working()).rows.get('caution', 'x')).toMatchObject({ endedAt: tuesdayTen, endedById: by });
    },
  );
  it.each(['second', 'partsClerk'] as const)('that is a working one is not ended by anybody else: %s', (by) => {
    expect(end(by, working()).codes).toEqual(['caution.notYours']);
    expect(end(by, working(), { lineId: 'l0' }).codes).toEqual(['caution.notYours']);
  });

  const standing = () =>
    here()
      .line('done', { progress: 'done' })
      .line('open', { progress: 'started' })
      .caution('x', { standing: true, code: 'liftingPoint', openedById: 'technician' });
  it('that stands is ended by owner or manager with words, not by who opened it', () => {
    expect(end('manager', standing(), { words: 'Plate fitted' }).codes).toEqual([]);
    expect(end('owner', standing()).codes).toEqual(['caution.wordsMissing']);
    expect(end('technician', standing(), { words: 'Plate fitted' }).codes).toEqual(['caution.standing']);
  });
  it('that stands is ended on the floor with the done line on this vehicle that mended it', () => {
    expect(end('technician', standing(), { lineId: 'done' }).codes).toEqual([]);
    expect(end('desk', standing(), { lineId: 'done' }).codes).toEqual(['caution.standing']);
    expect(end('technician', standing(), { lineId: 'open' }).codes).toEqual(['caution.lineNotDone']);
    expect(end('technician', standing(), { lineId: 'l0' }).codes).toEqual(['caution.lineOfOtherVehicle']);
    expect(end('technician', standing(), { lineId: 'l9' }).codes).toEqual(['row.notFound']);
  });
  it('ends once', () => {
    expect(end('manager', working().but('caution', 'x', { endedAt: tuesdayTen })).codes).toEqual(['caution.ended']);
    expect(end('manager', here()).codes).toEqual(['row.notFound']);
  });
});

describe('a finding', () => {
  const see = (input: Partial<AddFinding>, story: Given = here()) =>
    carryOut(
      addFinding,
      story.rows(),
      { jobId: 'j1', place: 'Front axle, left', kind: 'wear', ...input },
      { by: 'technician' },
    );

  it('is kept with its place folded, a plain decimal and its unit, and the vehicle of the job', () => {
    const { rows } = see({ measure: '02.50', unit: 'mm' });
    expect(rows.list('finding')).toMatchObject([
      { vehicleId: 'v1', placeKey: 'FRONTAXLELEFT', measure: '2.5', unit: 'mm', byId: 'technician' },
    ]);
  });
  it('is kept after the vehicle has left: it was seen', () => {
    expect(see({}, over()).codes).toEqual([]);
  });
  it('measures in a unit, of a concern of this job, under an id of its own', () => {
    expect(see({ measure: '2.5' }).codes).toEqual(['finding.unitMissing']);
    expect(see({ concernId: 's0' }, here().concern('s0', { jobId: 'j0' })).codes).toEqual([
      'finding.concernOfOtherJob',
    ]);
    expect(see({ concernId: 's9' }).codes).toEqual(['row.notFound']);
    expect(see({ findingId: 'f1' }, here().finding('f1')).codes).toEqual(['finding.alreadyThere']);
    expect(see({ jobId: 'j9' }).codes).toEqual(['row.notFound']);
  });
});

describe('a photo', () => {
  const attach = (input: Partial<AttachPhoto>, story: Given = here()) =>
    carryOut(attachPhoto, story.rows(), { jobId: 'j1', content: 'a'.repeat(64), width: 4, height: 3, ...input });

  it('belongs to the job, shows no people unless that is said, and may show a finding or a fix of it', () => {
    const story = here().finding('f1').fix('x1');
    const { rows } = attach({ findingId: 'f1', temporaryFixId: 'x1', moment: 'before' }, story);
    expect(rows.list('photo')).toMatchObject([
      { vehicleId: 'v1', findingId: 'f1', temporaryFixId: 'x1', moment: 'before', showsPeople: false },
    ]);
  });
  it('shows nothing of another job or vehicle, and nothing that is not there', () => {
    const story = here().finding('f0', { jobId: 'j0' }).fix('x0', { vehicleId: 'v0' });
    expect(attach({ findingId: 'f0' }, story).codes).toEqual(['photo.ofOtherVehicle']);
    expect(attach({ temporaryFixId: 'x0' }, story).codes).toEqual(['photo.ofOtherVehicle']);
    expect(attach({ findingId: 'f9' }).codes).toEqual(['row.notFound']);
    expect(attach({ jobId: 'j9' }).codes).toEqual(['row.notFound']);
    const once = attach({ photoId: 'p1' });
    expect(
      carryOut(attachPhoto, once.rows, { jobId: 'j1', photoId: 'p1', content: 'b', width: 1, height: 1 }).codes,
    ).toEqual(['photo.alreadyThere']);
  });
});
