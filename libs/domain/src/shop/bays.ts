import type { BayFacts, ChangeBay } from '../inputs.js';
import { canonical, compare } from '../kernel/amounts.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { specOn, todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { isRunning } from '../timeline/timeline.js';
import { strikeEntriesOf } from './valid-from.js';

/** A bay that has not ended by that day, `endedOn` being the first day without it. */
function stands(bay: Row<'bay'>, day: string): boolean {
  return bay.endedOn === null || bay.endedOn > day;
}

function refusedBay(rows: Rows, at: Circumstances, bayId: string, name: string, facts?: BayFacts): Refused | null {
  const key = foldKey(name);
  const today = todayOf(at);
  const namesake = rows.list('bay', (bay) => bay.id !== bayId && stands(bay, today) && foldKey(bay.name) === key)[0];
  if (namesake) return refuse('bay.nameTaken', { bayId: namesake.id }, { table: 'bay', id: namesake.id });
  return facts?.capacity !== undefined && compare(facts.capacity, '0') <= 0 ? refuse('bay.capacityNotPositive') : null;
}

/** The order of the building, from 1. A bay that is put where another one is moves that one and all behind it. */
function makeWay(rows: Rows, bayId: string, position: number): void {
  const others = rows.list('bay', (bay) => bay.id !== bayId);
  if (!others.some((bay) => bay.position === position)) return;
  for (const bay of others.filter((one) => one.position >= position)) {
    rows.change('bay', bay.id, { position: bay.position + 1 });
  }
}

/** Facts of the bay from a day of the shop's zone on; lengths in millimetres, capacity in the unit of its plate. */
function addFacts(rows: Rows, at: Circumstances, bayId: string, validFrom: string, facts: BayFacts): void {
  const shopsUnit = rows.list('shop')[0]?.units === 'us' ? 'lb' : 'kg';
  strikeEntriesOf(rows, 'baySpec', validFrom, (spec) => spec.bayId === bayId);
  rows.add('baySpec', {
    id: at.newId(),
    bayId,
    validFrom,
    spots: facts.spots,
    equipment: facts.equipment,
    capacity: facts.capacity === undefined ? null : canonical(facts.capacity),
    capacityUnit: facts.capacityUnit ?? shopsUnit,
    maxLengthMm: facts.maxLengthMm ?? null,
    maxHeightMm: facts.maxHeightMm ?? null,
    maxWheelbaseMm: facts.maxWheelbaseMm ?? null,
    inspectedOn: facts.inspectedOn ?? null,
    inspectionOutcome: facts.inspectionOutcome ?? null,
    inspectionIntervalMonths: facts.inspectionIntervalMonths ?? null,
    outOfUse: facts.outOfUse ?? false,
    outOfUseWords: facts.outOfUseWords ?? null,
  });
}

/** A claim. Without a position it comes last in the order of the building; its facts hold from today where no day is said. */
export const addBay: CommandRule<'addBay'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    if (rows.find('bay', input.bayId)) return refuse('bay.alreadyThere', { bayId: input.bayId ?? null });
    const bayId = input.bayId ?? at.newId();
    const name = input.name.trim();
    const refused = refusedBay(rows, at, bayId, name, input);
    if (refused) return refused;
    const position = input.position ?? Math.max(0, ...rows.list('bay').map((bay) => bay.position)) + 1;
    makeWay(rows, bayId, position);
    rows.add('bay', { id: bayId, name, position, endedOn: null });
    addFacts(rows, at, bayId, input.validFrom ?? todayOf(at), input);
    return { facts: { bayId, position, spots: input.spots }, created: { bay: bayId } };
  },
};

/** Running uses of spots above the number, highest first. */
function usesAbove(rows: Rows, bayId: string, spots: number): Row<'spotUse'>[] {
  const uses = rows.list('spotUse', (use) => use.bayId === bayId && isRunning(use) && use.spot > spots);
  return uses.sort((a, b) => b.spot - a.spot);
}

/** Rule 1 against the bay as it is to be: it does not end, and loses no spot, under a vehicle. It may go out of use. */
function refusedUnderVehicle(rows: Rows, at: Circumstances, bay: Row<'bay'>): Refused | null {
  const today = todayOf(at);
  const { spots } = specOn(rows, bay.id, today);
  const [ended, over] = [
    stands(bay, today) ? undefined : usesAbove(rows, bay.id, 0)[0],
    usesAbove(rows, bay.id, spots)[0],
  ];
  const use = ended ?? over;
  if (!use) return null;
  const number = rows.find('job', use.jobId)?.number ?? 0;
  const way = { table: 'job', id: use.jobId };
  return ended
    ? refuse('bay.occupied', { bayId: bay.id, number }, way)
    : refuse('bay.spotsInUse', { bayId: bay.id, spots, spot: use.spot, number }, way);
}

function changedBay(rows: Rows, input: ChangeBay, bay: Row<'bay'>, name: string): Row<'bay'> {
  const position = input.position ?? bay.position;
  if (position !== bay.position) makeWay(rows, bay.id, position);
  const endedOn = input.endedOn === undefined ? bay.endedOn : input.endedOn;
  return rows.change('bay', bay.id, { name, position, endedOn });
}

/** A turn on the bay, whose version moves whatever of it changes. Facts hold from a day on; those before keep theirs. */
export const changeBay: CommandRule<'changeBay'> = {
  needs: (input) => ({ bays: [input.bayId] }),
  decide: (rows, input, at) => {
    const bay = live(rows, 'bay', input.bayId);
    if (!bay) return notThere('bay', input.bayId);
    const name = input.name?.trim() ?? bay.name;
    const refused = refusedBay(rows, at, bay.id, name, input.facts);
    if (refused) return refused;
    const changed = changedBay(rows, input, bay, name);
    const validFrom = input.validFrom ?? todayOf(at);
    if (input.facts) addFacts(rows, at, bay.id, validFrom, input.facts);
    const underVehicle = refusedUnderVehicle(rows, at, changed);
    if (underVehicle) return underVehicle;
    const { position, endedOn } = changed;
    const facts = { bayId: bay.id, position, endedOn };
    return { facts: input.facts ? { ...facts, validFrom, outOfUse: input.facts.outOfUse ?? false } : facts };
  },
};
