import { describe, expect, it } from '@jest/globals';
import { judgeMass, type LoadSaid } from './lift-mass.js';

const judge = (curbKg: number | null, grossKg: number | null, weighedKg: number | null, said: LoadSaid = {}) =>
  judgeMass({ curbKg, grossKg, weighedKg }, 3000, said);

describe('rule 4: a lift rated for 3000 kg', () => {
  it('refuses a curb or weighed mass above it, whatever is answered', () => {
    expect(judge(3001, null, null, { loaded: false })).toEqual({ verdict: 'above', massKg: 3001 });
    expect(judge(2000, 3500, 3001, { loaded: false })).toEqual({ verdict: 'above', massKg: 3001 });
    expect(judge(3000, 3500, 3000, { loaded: false }).verdict).toBe('passes');
  });

  it('adds the stated load to the curb mass, also when "loaded" was not said', () => {
    expect(judge(2400, 3500, null, { loaded: true, loadKg: 601 })).toEqual({ verdict: 'above', massKg: 3001 });
    expect(judge(2400, 3500, null, { loadKg: 601 }).verdict).toBe('above');
    expect(judge(2400, 3500, null, { loadKg: 600 }).verdict).toBe('passes');
    expect(judge(null, 3500, 2900, { loadKg: 101 }).verdict).toBe('above');
    expect(judge(null, null, null, { loadKg: 3001 }).verdict).toBe('above');
  });

  it('lets a gross rating within it pass without a question, unless more than that is on', () => {
    expect(judge(null, 3000, null).verdict).toBe('passes');
    expect(judge(2400, 3000, null, { loadKg: 700 }).verdict).toBe('above');
  });

  it('asks "loaded or empty?" in between and where nothing is known', () => {
    expect(judge(2400, 3500, null).verdict).toBe('asks');
    expect(judge(2400, null, null).verdict).toBe('asks');
    expect(judge(null, null, null).verdict).toBe('asks');
    expect(judge(2400, 3500, 2600).verdict).toBe('asks');
  });

  it('takes "empty" for an answer, counting no load that was said beside it', () => {
    expect(judge(2400, 3500, null, { loaded: false, loadKg: 900 }).verdict).toBe('passes');
  });

  it('wants the kilograms of a load that may bring it above', () => {
    expect(judge(2400, 3500, null, { loaded: true })).toEqual({ verdict: 'asksWeight', grossKg: 3500 });
  });

  it('lets a named person answer where no gross rating is known', () => {
    expect(judge(2400, null, null, { loaded: true }).verdict).toBe('passes');
  });
});
