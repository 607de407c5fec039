/**
 * cautions/ hides what each caution forbids, who ends it, and how what is open on a vehicle (fuel, wheels) reaches other
 * acts and neighbouring bays. It guarantees that there is one table: every move, road test, start and hand-back asks it,
 * and no screen or command has a copy of a row of it. It never says that something is safe; it says what is forbidden
 * here as long as a caution stands, and the vehicle maker's instructions and local rules decide besides.
 */
import type { CautionCode, skills } from '../tables/words.js';

/** What somebody may want to do with a vehicle on which a caution stands. */
export const acts = [
  'startWork',
  'startEngine',
  'roadTest',
  /** From place to place on its own wheels, pushed. */
  'moveRolling',
  /** From place to place under its own power. */
  'moveDriven',
  /** On dollies or towed, by somebody who is named. */
  'moveTowed',
  'liftByPoints',
  'placeOverPit',
  /** In the same or a neighbouring bay of hot work. */
  'hotWorkBeside',
  'handBackByRoad',
  'handBackOnTransporter',
] as const;
export type Act = (typeof acts)[number];

/**
 * `refuse`: not while it stands. `flag`: done, and marked. `points`: not before owner or manager named the points that are
 * used on this visit, by nobody. A skill: only by a person who has it today, with no override.
 */
export type Verdict = 'allow' | 'flag' | 'refuse' | 'points' | { readonly skill: (typeof skills)[number] };

/** Who may end a caution: whoever opened it, the second person named with it, owner or manager, a line that mended it. */
export type Ender = 'opener' | 'second' | 'lead' | 'leadWithWords' | 'mendingLine';

/** Of a working one, and of one that stays with the vehicle. The same in a shop with one technician: one's own, too. */
export const enders = {
  working: ['opener', 'second', 'lead'],
  standing: ['leadWithWords', 'mendingLine'],
} as const satisfies Readonly<Record<'working' | 'standing', readonly Ender[]>>;

interface CautionRow {
  /** Stays with the vehicle, belongs to the visit, or either as somebody says. */
  readonly lasts: 'standing' | 'working' | 'either';
  readonly acts: Readonly<Partial<Record<Act, Verdict>>>;
}

const onTheRoad = { roadTest: 'refuse', handBackByRoad: 'refuse' } as const;
const underPower = { ...onTheRoad, startEngine: 'refuse', moveDriven: 'refuse' } as const;
const anyMove = {
  ...onTheRoad,
  moveRolling: 'refuse',
  moveDriven: 'refuse',
  moveTowed: 'refuse',
  handBackOnTransporter: 'refuse',
} as const;

/** The table. What a row does not name is allowed. */
export const cautionTable: Readonly<Record<CautionCode, CautionRow>> = {
  liftingPoint: { lasts: 'standing', acts: { liftByPoints: 'points' } },
  electricDrive: { lasts: 'standing', acts: {} },
  gasTank: { lasts: 'standing', acts: { placeOverPit: 'flag' } },
  highVoltageLive: { lasts: 'working', acts: { ...underPower, startWork: { skill: 'highVoltage' } } },
  highVoltageDead: { lasts: 'working', acts: { ...underPower } },
  airbagUnplugged: { lasts: 'working', acts: { ...onTheRoad } },
  fuelOpen: { lasts: 'working', acts: { ...underPower, placeOverPit: 'refuse', hotWorkBeside: 'refuse' } },
  brakesOpen: { lasts: 'working', acts: { ...onTheRoad, moveRolling: 'refuse', moveDriven: 'refuse' } },
  noOil: { lasts: 'working', acts: { ...underPower } },
  wheelsNotTorqued: { lasts: 'working', acts: { ...onTheRoad } },
  batteryOff: { lasts: 'working', acts: { ...onTheRoad } },
  onStands: { lasts: 'working', acts: { ...anyMove } },
  hotWork: { lasts: 'working', acts: { ...onTheRoad } },
  pitOpen: { lasts: 'working', acts: { ...anyMove } },
  doNotStart: { lasts: 'either', acts: { ...underPower } },
  doNotMove: { lasts: 'either', acts: { ...anyMove } },
  other: { lasts: 'either', acts: {} },
};

export function verdictOf(code: CautionCode, act: Act): Verdict {
  return cautionTable[code].acts[act] ?? 'allow';
}

/** The key of the words that say what a caution forbids, shown wherever the caution is. */
export function forbidsKey(code: CautionCode): `caution.${CautionCode}.forbids` {
  return `caution.${code}.forbids`;
}
