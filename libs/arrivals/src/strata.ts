/**
 * What is like what: observations grouped by supplier, state, kind of part, how many days had been named before and how
 * far ahead, and the coarser groups that stand behind thin ones.
 *
 * Hidden here: keys, order and pooling. Guaranteed: a curve of a group is its own observations with the curve of the
 * next coarser group as the prior, up to all suppliers together; so a thin group leans on what is like it, and a full
 * one hardly at all.
 */
import type { SupplierState } from './history.js';
import { type StepCurve, isEvent, mixedCurve } from './step-curve.js';

/**
 * What an observation measures. `slip`: from the day named to the day it was good, in working days, negative when early.
 * `wait`: from the word (or the order) on, in working days. `runs`: the run of the supplier that brought it, 1 = the
 * first that the order made. `hours`: open quarter hours.
 */
export type Measure = 'slip' | 'wait' | 'runs' | 'hours';

/** How far ahead the day lay when it was named: up to so many working days; Infinity: more than 160. */
export const horizons = [2, 5, 10, 20, 40, 80, 160, Infinity] as const;
export type Horizon = (typeof horizons)[number];
/** Which named day of its line it was; 3 stands for the third and all after it. `later`: the word came after the order. */
export type Ordinal = 1 | 2 | 3;

/** What a group has in common; what is absent may be anything. A null supplier or kind: none was given. */
export interface Stratum {
  readonly supplierId?: string | null;
  readonly state?: SupplierState | null;
  readonly partKind?: string | null;
  readonly ordinal?: Ordinal;
  readonly horizon?: Horizon;
  readonly later?: boolean;
}

type Fact = keyof Stratum;

/** From the finest group to the coarsest; the finest has every fact of the others. */
const levels: Readonly<Record<Measure, readonly (readonly Fact[])[]>> = {
  slip: [
    ['supplierId', 'state', 'partKind', 'ordinal', 'horizon'],
    ['supplierId', 'ordinal', 'horizon'],
    ['supplierId', 'ordinal'],
    ['ordinal', 'horizon'],
    [],
  ],
  wait: [['supplierId', 'state', 'partKind', 'later'], ['supplierId', 'state', 'later'], ['state', 'later'], ['later']],
  runs: [['supplierId', 'partKind'], ['supplierId'], []],
  hours: [['supplierId', 'partKind'], ['supplierId'], []],
};

/**
 * A stratum in two whole numbers, so that the group it belongs to at any level is a mask away: supplier and kind of part
 * in `who`, the few values of the other facts in `what`.
 */
export interface PackedStratum {
  readonly who: number;
  readonly what: number;
}

/** Where each fact lies, and how many values there is room for. */
const places: Readonly<Record<Fact, { readonly in: 'who' | 'what'; readonly at: number; readonly bits: number }>> = {
  supplierId: { in: 'who', at: 0, bits: 16 },
  partKind: { in: 'who', at: 16, bits: 14 },
  state: { in: 'what', at: 0, bits: 3 },
  ordinal: { in: 'what', at: 3, bits: 2 },
  horizon: { in: 'what', at: 5, bits: 4 },
  later: { in: 'what', at: 9, bits: 2 },
};
/** one above the greatest `what` */
const whats = 2048;

/** Numbers for suppliers, kinds and states, from 1 on; 0 for one not seen while learning, which is in no group. */
export class Numbering {
  private readonly suppliers = new Map<string | null, number>();
  private readonly kinds = new Map<string | null, number>();
  private readonly states = new Map<string | null, number>();
  private learns = true;

  /** From now on what has not been seen gets no number. */
  stopLearning(): void {
    this.learns = false;
  }

  /** Supplier and kind of part. */
  who(supplierId: string | null, partKind: string | null): number {
    return this.place('supplierId', this.suppliers, supplierId) | this.place('partKind', this.kinds, partKind);
  }

  what(one: Required<Stratum>): number {
    return (
      this.place('state', this.states, one.state) |
      (one.ordinal << places.ordinal.at) |
      ((horizons.indexOf(one.horizon) + 1) << places.horizon.at) |
      ((one.later ? 2 : 1) << places.later.at)
    );
  }

  private place(fact: Fact, values: Map<string | null, number>, value: string | null): number {
    const { at, bits } = places[fact];
    let found = values.get(value);
    if (found === undefined) {
      if (!this.learns) return 0;
      found = values.size + 1;
      if (found >= 2 ** bits) throw new RangeError(`There is room for ${2 ** bits - 1} values of ${fact}.`);
      values.set(value, found);
    }
    return found << at;
  }
}

export interface Counted {
  readonly stratum: Stratum;
  readonly observations: number;
  readonly events: number;
}

/** Where a curve comes from: the finest group that holds anything finished, and the coarser one mixed in. */
export interface Source {
  readonly own: Counted | null;
  readonly pooledFrom: Counted | null;
}

/** The groups of one measure, at each of its levels. */
export interface Strata {
  curve(stratum: PackedStratum): StepCurve | null;
  source(stratum: PackedStratum, facts: Required<Stratum>): Source;
}

/** Observations in any order: place by place a stratum and a code. */
export interface Observed {
  readonly who: number[];
  readonly what: number[];
  readonly codes: number[];
}

/** A stretch of the level's codes. */
interface Group {
  from: number;
  to: number;
  events: number;
}

interface Level {
  readonly facts: readonly Fact[];
  readonly who: number;
  readonly what: number;
  readonly groups: ReadonlyMap<number, Group>;
  /** group after group, ascending within each */
  readonly codes: Int32Array;
  readonly curves: Map<number, StepCurve | null>;
}

function maskOf(facts: readonly Fact[]): { readonly who: number; readonly what: number } {
  const mask = { who: 0, what: 0 };
  for (const fact of facts) mask[places[fact].in] |= (2 ** places[fact].bits - 1) << places[fact].at;
  return mask;
}

/** Observations in ascending order of their codes, each with its place among the finest groups. */
interface Sorted {
  readonly codes: Int32Array;
  readonly finest: Int32Array;
  /** a stratum of each finest group */
  readonly strata: readonly PackedStratum[];
}

/** Numbers sort fast where code and place share one. */
function inOrder({ who, what, codes }: Observed, facts: readonly Fact[]): Sorted {
  const count = 2 ** Math.ceil(Math.log2(codes.length + 1));
  const packed = new Float64Array(codes.length);
  for (let i = 0; i < codes.length; i += 1) packed[i] = (codes[i] ?? 0) * count + i;
  packed.sort();
  const mask = maskOf(facts);
  const known = new Map<number, number>();
  const sorted = { codes: new Int32Array(codes.length), finest: new Int32Array(codes.length) };
  const strata: PackedStratum[] = [];
  for (let i = 0; i < codes.length; i += 1) {
    const one = packed[i] ?? 0;
    const code = Math.floor(one / count);
    const at = one - code * count;
    const stratum = { who: (who[at] ?? 0) & mask.who, what: (what[at] ?? 0) & mask.what };
    const key = stratum.who * whats + stratum.what;
    let group = known.get(key);
    if (group === undefined) known.set(key, (group = strata.push(stratum) - 1));
    sorted.codes[i] = code;
    sorted.finest[i] = group;
  }
  return { ...sorted, strata };
}

/** Deals observations out into the groups of a level; their order stays within each group. */
function levelOf(facts: readonly Fact[], { codes: all, finest, strata }: Sorted): Level {
  const mask = maskOf(facts);
  const groups = new Map<number, Group>();
  const ofFinest = strata.map(({ who, what }) => {
    const key = (who & mask.who) * whats + (what & mask.what);
    let group = groups.get(key);
    if (group === undefined) groups.set(key, (group = { from: 0, to: 0, events: 0 }));
    return group;
  });
  for (const at of finest) {
    const group = ofFinest[at];
    if (group !== undefined) group.to += 1;
  }
  let from = 0;
  for (const group of groups.values()) {
    const size = group.to;
    group.from = from;
    group.to = from;
    from += size;
  }
  const codes = new Int32Array(all.length);
  for (let i = 0; i < all.length; i += 1) {
    const group = ofFinest[finest[i] ?? 0];
    const code = all[i] ?? 0;
    if (group === undefined) continue;
    codes[group.to++] = code;
    if (isEvent(code)) group.events += 1;
  }
  return { facts, ...mask, groups, codes, curves: new Map() };
}

const keyOf = (level: Level, { who, what }: PackedStratum): number => (who & level.who) * whats + (what & level.what);

/** The groups of a measure; the curves are worked out as they are asked for, and kept. */
export function strataOf(measure: Measure, observed: Observed, priorWeight: number): Strata {
  const sorted = inOrder(observed, levels[measure][0] ?? []);
  const all = levels[measure].map((facts) => levelOf(facts, sorted));
  const curveAt = (at: number, stratum: PackedStratum): StepCurve | null => {
    const level = all[at];
    if (level === undefined) return null;
    const key = keyOf(level, stratum);
    const kept = level.curves.get(key);
    if (kept !== undefined) return kept;
    const behind = curveAt(at + 1, stratum);
    const group = level.groups.get(key);
    // A group without observations is not kept: what is in no group has no key of its own.
    if (group === undefined) return behind;
    const prior = behind === null ? null : { curve: behind, weight: priorWeight };
    const curve = mixedCurve(level.codes.subarray(group.from, group.to), prior);
    level.curves.set(key, curve);
    return curve;
  };
  return {
    curve: (stratum) => curveAt(0, stratum),
    source(stratum, facts) {
      const found = all.flatMap((level) => {
        const group = level.groups.get(keyOf(level, stratum));
        return group === undefined || group.events === 0 ? [] : [counted(level, facts, group)];
      });
      const own = found[0] ?? null;
      const behind = own && found.find((one) => one.observations > own.observations);
      return { own, pooledFrom: behind ?? null };
    },
  };
}

const counted = (level: Level, facts: Required<Stratum>, group: Group): Counted => ({
  stratum: Object.fromEntries(level.facts.map((fact) => [fact, facts[fact]])),
  observations: group.to - group.from,
  events: group.events,
});
