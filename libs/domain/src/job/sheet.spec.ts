import { describe, expect, it } from '@jest/globals';
import type { HandBack } from '../inputs.js';
import { type Given, given, hour, opening, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { handBack } from './hand-back.js';
import type { SheetContent } from './sheet-content.js';

/** A visit on which nothing is open any more. */
const ready = () =>
  given()
    .shop()
    .season('salt')
    .customer('c1', { name: 'Harbour Fleet' })
    .vehicle('v1', { plate: 'QY12 ABC' })
    .job('j1', { number: 7 })
    .concern('s1', { outcome: 'gone', conditions: 'over kerbs', outcomeConditions: 'over kerbs' })
    .inYard()
    .line('l1', { progress: 'done', startedAt: tuesdayTen - hour, endWords: 'Step renewed', concernId: 's1' });

const sheetOf = (story: Given, input: Partial<HandBack> = {}, by: 'desk' | 'manager' = 'desk'): SheetContent => {
  const usual = { jobId: 'j1', leavesBy: 'road', receivedBy: 'A Driver', receivedHow: 'there' } as const;
  return carryOut(handBack, story.rows(), { ...usual, ...input }, { by }).rows.list('sheet')[0]
    ?.content as SheetContent;
};

describe('the sheet', () => {
  it('says concern, cause and correction, and who gave it to whom', () => {
    const story = ready()
      .finding('n1', { concernId: 's1', words: 'Bolt sheared' })
      .part('p1', { state: 'fitted', fitted: '1' });
    expect(sheetOf(story)).toMatchObject({
      shop: 'Quayside',
      jobNumber: 7,
      vehicle: { plate: 'QY12 ABC' },
      customer: 'Harbour Fleet',
      checkedInAt: '2026-03-10T08:00:00.000Z',
      leftAt: '2026-03-10T10:00:00.000Z',
      concerns: [
        {
          words: 'Rattles at the rear',
          outcome: 'gone',
          outcomeConditions: 'over kerbs',
          causes: [{ place: 'Rear step', kind: 'fault', words: 'Bolt sheared' }],
          corrections: [{ title: 'Renew the rear step', words: 'Step renewed' }],
        },
      ],
      otherWork: [],
      otherFindings: [],
      partsFitted: [{ description: 'Rear step', fitted: '1', unit: 'piece' }],
      receivedBy: 'A Driver',
      handedBackBy: 'The desk',
    });
  });
  it('says what is temporary until when, by whom it was checked, allowed and signed for', () => {
    const story = ready()
      .followUp('f1', { seasonId: 'salt', urgency: 'urgent' })
      .fix('x1', { system: 'brakes', followUpId: 'f1' })
      .secondCheck('y1');
    const byRoad = [{ temporaryFixId: 'x1', words: 'To the depot', receiverSigned: true }];
    const sheet = sheetOf(story, { byRoad }, 'manager');
    expect(sheet.temporary).toMatchObject([
      {
        kind: 'heldBy',
        standsInFor: 'Bolts of the rear step',
        place: 'Rear step, left',
        system: 'brakes',
        beforeDay: '2026-04-01',
        endedByWhat: 'New rear step',
        secondChecks: [{ by: 'The second', samePerson: false }],
        byRoad: { allowedBy: 'The manager', words: 'To the depot', receiverSigned: true },
      },
    ]);
    expect(sheet.followUps).toMatchObject([{ title: 'Renew the rear step', season: 'Salt', urgency: 'urgent' }]);
    expect(sheetOf(story, { leavesBy: 'transporter' }).temporary[0]?.byRoad).toBeNull();
  });
  it('says what was put off, declined, dropped, left for later, and what was not looked at', () => {
    const story = ready()
      .concern('s2', { words: 'Smells', outcome: 'notTried', outcomeWords: 'No fuel in it' })
      .finding('n1', { place: 'Spare wheel', kind: 'couldNotBeChecked', words: 'Locked' })
      .line('l2', { title: 'Tyres', goAhead: 'deferred' })
      .line('l3', { title: 'Wipers', goAhead: 'declined' })
      .line('l4', { title: 'Belt', progress: 'dropped', endWords: 'Not needed' })
      .line('l5', { title: 'Lamp', goAhead: 'given' })
      .followUp('f1', { lineId: 'l5' })
      .line('l6', { title: 'Step', progress: 'carriedOver', endWords: 'One side done' })
      .caution('x', { standing: true, code: 'gasTank' });
    const sheet = sheetOf(story);
    expect(sheet.putOff).toEqual([
      { title: 'Tyres', why: 'deferred', words: null },
      { title: 'Wipers', why: 'declined', words: null },
      { title: 'Belt', why: 'dropped', words: 'Not needed' },
      { title: 'Lamp', why: 'later', words: null },
      { title: 'Step', why: 'carriedOver', words: 'One side done' },
    ]);
    expect(sheet.notLookedAt).toEqual([
      { what: 'Smells', why: 'No fuel in it' },
      { what: 'Spare wheel', why: 'Locked' },
    ]);
    expect(sheet.cautions).toEqual([{ code: 'gasTank', words: null, standing: true }]);
  });
  it('says which attempts showed a concern, its causes and how sure, and work done for a cause it shares', () => {
    const told = { recordedAt: opening, effectiveAt: opening, byId: 'technician', device: null };
    const attempt = { ...told, jobId: 'j1', concernId: 's1', odometerUnit: 'km', placeId: null } as const;
    const story = ready()
      .row('attempt', { id: 'a1', ...attempt, conditions: 'cold, town', odometer: 10, appeared: false, words: null })
      .row('attempt', { id: 'a2', ...attempt, conditions: 'over kerbs', odometer: null, appeared: true, words: 'Left' })
      .row('cause', { id: 'k1', ...told, jobId: 'j1', words: 'Bush worn', certainty: 'found' })
      .row('causeConcern', { id: 'kc1', jobId: 'j1', causeId: 'k1', concernId: 's1' })
      .line('l2', { progress: 'done', title: 'Bush', causeId: 'k1' })
      .line('l3', { progress: 'done', title: 'Wash' });
    const sheet = sheetOf(story);
    expect(sheet.concerns).toMatchObject([
      {
        attempts: [
          {
            conditions: 'cold, town',
            appeared: false,
            odometer: 10,
            by: 'The technician',
            at: '2026-03-10T08:00:00.000Z',
          },
          { conditions: 'over kerbs', appeared: true, words: 'Left' },
        ],
        knownCauses: [{ words: 'Bush worn', certainty: 'found' }],
        corrections: [{ title: 'Renew the rear step' }, { title: 'Bush' }],
      },
    ]);
    expect(sheet.otherWork).toEqual([{ title: 'Wash', words: null }]);
  });
  it('says each wheel that was off with its torque, its source and who, and which left off the vehicle', () => {
    const story = ready()
      .wheel('w1', '1L', {
        ...{
          onAt: opening,
          torquedAt: opening,
          torque: '120',
          torqueUnit: 'newtonMetre',
          torqueSource: 'vehicleMaker',
        },
        ...{ tool: 'Wrench 3', torquedById: 'technician' },
      })
      .wheel('w2', '1R')
      .caution('x', { code: 'noOil', words: 'Drained' });
    expect(sheetOf(story, { leavesBy: 'transporter' }).wheels).toEqual([
      {
        ...{
          position: '1L',
          torque: '120',
          torqueUnit: 'newtonMetre',
          torqueSource: 'vehicleMaker',
          sourceWords: null,
        },
        ...{ tool: 'Wrench 3', isOn: true, by: 'The technician' },
      },
      {
        ...{ position: '1R', torque: null, torqueUnit: null, torqueSource: null, sourceWords: null },
        ...{ tool: null, isOn: false, by: '' },
      },
    ]);
    expect(sheetOf(story, { leavesBy: 'transporter' }).cautions).toEqual([
      { code: 'noOil', words: 'Drained', standing: false },
    ]);
  });
  it('says what another firm did, and not what was only arranged or called off', () => {
    const story = ready()
      .sublet('u1', { state: 'ended', fromAt: opening, toAt: tuesdayTen, lineId: 'l1' })
      .sublet('u2')
      .sublet('u3', { state: 'cancelled' });
    expect(sheetOf(story).sublets).toEqual([
      { form: 'vehicleOut', firm: 'Harbour Paint', component: null, state: 'ended', title: 'Renew the rear step' },
    ]);
    expect(sheetOf(story).release).toBeNull();
  });
  it('is plain data that the store can freeze', () => {
    const sheet = sheetOf(ready());
    expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet);
  });
});
