/**
 * In-service limits in print, each for its class of vehicle and no other. A rule that prints its figure in two units is
 * kept in both: 1.6 mm and 1/16 in are not the same limit (1/16 in is 1.5875 mm), so a reading is compared in the unit it
 * was taken in where the rule has that unit, else in the rule's own.
 */
import type { LengthUnit } from './units.js';

/** `disc`: its thickness; in print only as the figure on the disc (49 CFR 570.59(b)), which is the maker's. */
export type MeasuredWhat = 'tread' | 'lining' | 'liningOverFastener' | 'disc';

/** Whom a rule speaks of. A vehicle belongs to the classes that somebody said it belongs to; nothing is inferred. */
export type LimitClass =
  | 'usTruckBus'
  | 'usOver10000lb'
  | 'usLight'
  | 'euCarVan'
  | 'gbCarVan'
  | 'gbOther'
  | 'marylandHeavy'
  | 'marylandMotorcycle'
  | 'franceCar';

/** Position and make of the brake or tyre, as far as rules tell them apart. */
export interface MeasuredPart {
  readonly what: MeasuredWhat;
  readonly steering: boolean | null;
  readonly brake?:
    'airDrumContinuous' | 'airDrumTwoPads' | 'airDisc' | 'hydraulicDisc' | 'hydraulicDrum' | 'electric' | null;
  readonly lining?: 'riveted' | 'bonded' | null;
}

export interface PublishedLimit {
  readonly id: string;
  readonly source: string;
  /** `memory`: the text of the rule itself was not seen; the answer says so */
  readonly seen: 'text' | 'quoted' | 'memory';
  readonly classes: readonly LimitClass[];
  readonly what: MeasuredWhat;
  readonly steering: boolean | null;
  readonly brakes?: readonly NonNullable<MeasuredPart['brake']>[];
  readonly lining?: 'riveted' | 'bonded';
  /** the same limit as printed, one entry per unit, the rule's own first */
  readonly printed: readonly { readonly value: number; readonly unit: LengthUnit }[];
  readonly failsWhen: 'below' | 'atOrBelow';
  /** where it is measured, in a code */
  readonly band?:
    | 'anyPoint'
    | 'majorGroove'
    | 'threePlaces'
    | 'centralThreeQuarters'
    | 'threeQuarters'
    | 'shoeCentre'
    | 'mainGrooves';
}

const in32 = (value: number) => ({ value, unit: 'in32' }) as const;
const mm = (value: number) => ({ value, unit: 'mm' }) as const;

const treadLimits: readonly PublishedLimit[] = [
  {
    id: '393.75(b)',
    source: '49 CFR 393.75(b)',
    seen: 'text',
    classes: ['usTruckBus'],
    what: 'tread',
    steering: true,
    printed: [in32(4)],
    failsWhen: 'below',
    band: 'anyPoint',
  },
  {
    id: '393.75(c)',
    source: '49 CFR 393.75(c)',
    seen: 'text',
    classes: ['usTruckBus'],
    what: 'tread',
    steering: false,
    printed: [in32(2)],
    failsWhen: 'below',
    band: 'majorGroove',
  },
  {
    id: '570.62(a) front',
    source: '49 CFR 570.62(a)',
    seen: 'text',
    classes: ['usOver10000lb'],
    what: 'tread',
    steering: true,
    printed: [in32(4)],
    failsWhen: 'below',
    band: 'threePlaces',
  },
  {
    id: '570.62(a)',
    source: '49 CFR 570.62(a)',
    seen: 'text',
    classes: ['usOver10000lb'],
    what: 'tread',
    steering: false,
    printed: [in32(2)],
    failsWhen: 'below',
    band: 'threePlaces',
  },
  {
    id: '570.9(a)',
    source: '49 CFR 570.9(a)',
    seen: 'memory',
    classes: ['usLight'],
    what: 'tread',
    steering: null,
    printed: [in32(2)],
    failsWhen: 'below',
  },
  {
    id: 'COMAR 11.14.05.05',
    source: 'Maryland COMAR 11.14.05.05',
    seen: 'text',
    classes: ['marylandHeavy'],
    what: 'tread',
    steering: null,
    printed: [in32(2)],
    failsWhen: 'below',
    band: 'threePlaces',
  },
  {
    id: 'COMAR 11.14.03.05',
    source: 'Maryland COMAR 11.14.03.05',
    seen: 'text',
    classes: ['marylandMotorcycle'],
    what: 'tread',
    steering: null,
    printed: [in32(1)],
    failsWhen: 'below',
    band: 'anyPoint',
  },
  {
    id: '89/459/EEC',
    source: 'Directive 89/459/EEC',
    seen: 'quoted',
    classes: ['euCarVan', 'franceCar'],
    what: 'tread',
    steering: null,
    printed: [mm(1.6)],
    failsWhen: 'below',
    band: 'mainGrooves',
  },
  {
    id: 'C&U 27 cars',
    source: 'C&U Regulations 1986, reg. 27 (police guidance)',
    seen: 'quoted',
    classes: ['gbCarVan'],
    what: 'tread',
    steering: null,
    printed: [mm(1.6)],
    failsWhen: 'below',
    band: 'centralThreeQuarters',
  },
  {
    id: 'C&U 27 others',
    source: 'C&U Regulations 1986, reg. 27 (police guidance)',
    seen: 'quoted',
    classes: ['gbOther'],
    what: 'tread',
    steering: null,
    printed: [mm(1)],
    failsWhen: 'below',
    band: 'threeQuarters',
  },
];

type Brake = NonNullable<MeasuredPart['brake']>;

/** Lining limits of trucks and buses: 49 CFR 393.47(d), and appendix A to part 396, which differs in places. */
function truckLining(
  id: string,
  steering: boolean,
  brakes: readonly Brake[],
  sixteenths: number,
  failsWhen: PublishedLimit['failsWhen'],
): PublishedLimit {
  const millimetres = { 1: 1.6, 2: 3.2, 3: 4.8, 4: 6.4 }[sixteenths];
  const printedInMm = id.startsWith('393') && millimetres !== undefined ? [mm(millimetres)] : [];
  return {
    id: `${id} ${brakes[0] ?? ''} ${steering ? 'steering' : 'other'}`,
    source: `49 CFR ${id}`,
    seen: 'text',
    classes: ['usTruckBus'],
    what: 'lining',
    steering,
    brakes,
    printed: [...printedInMm, in32(sixteenths * 2)],
    failsWhen,
    band: 'shoeCentre',
  };
}

const hydraulic: readonly Brake[] = ['hydraulicDisc', 'hydraulicDrum', 'electric'];
const airDrums: readonly Brake[] = ['airDrumContinuous', 'airDrumTwoPads'];
const appendix = 'part 396 appendix A, 1.a(6)';

const liningLimits: readonly PublishedLimit[] = [
  truckLining('393.47(d)(1)', true, ['airDrumContinuous'], 3, 'below'),
  truckLining('393.47(d)(1)', true, ['airDrumTwoPads'], 4, 'below'),
  truckLining('393.47(d)(1)', true, ['airDisc'], 2, 'below'),
  truckLining('393.47(d)(1)', true, hydraulic, 1, 'atOrBelow'),
  truckLining('393.47(d)(2)', false, airDrums, 4, 'below'),
  truckLining('393.47(d)(2)', false, ['airDisc'], 2, 'below'),
  truckLining('393.47(d)(2)', false, hydraulic, 1, 'below'),
  truckLining(appendix, true, airDrums, 4, 'below'),
  truckLining(appendix, true, ['airDisc'], 2, 'below'),
  truckLining(appendix, true, ['hydraulicDisc', 'electric'], 1, 'atOrBelow'),
  truckLining(appendix, false, airDrums, 4, 'below'),
  truckLining(appendix, false, ['airDisc'], 2, 'below'),
  truckLining(appendix, false, ['hydraulicDrum', 'electric'], 1, 'atOrBelow'),
  {
    id: '570.59(c) riveted',
    source: '49 CFR 570.59(c)',
    seen: 'text',
    classes: ['usOver10000lb'],
    what: 'liningOverFastener',
    steering: null,
    lining: 'riveted',
    printed: [in32(1)],
    failsWhen: 'below',
  },
  {
    id: '570.59(c) bonded',
    source: '49 CFR 570.59(c)',
    seen: 'text',
    classes: ['usOver10000lb'],
    what: 'lining',
    steering: null,
    lining: 'bonded',
    printed: [in32(2)],
    failsWhen: 'below',
  },
  {
    id: '570.5 riveted',
    source: '49 CFR 570.5',
    seen: 'memory',
    classes: ['usLight'],
    what: 'liningOverFastener',
    steering: null,
    lining: 'riveted',
    printed: [in32(1)],
    failsWhen: 'below',
  },
];

const everyLimit: readonly PublishedLimit[] = [...treadLimits, ...liningLimits];

function speaksOf(limit: PublishedLimit, part: MeasuredPart): boolean {
  const brake = part.brake ?? null;
  return (
    limit.what === part.what &&
    (limit.steering === null || limit.steering === part.steering) &&
    (limit.brakes === undefined || (brake !== null && limit.brakes.includes(brake))) &&
    (limit.lining === undefined || limit.lining === part.lining)
  );
}

/** The rules in print that speak of this part of a vehicle of these classes; none for a vehicle of no named class. */
export function publishedLimits(classes: readonly LimitClass[], part: MeasuredPart): readonly PublishedLimit[] {
  return everyLimit.filter((limit) => limit.classes.some((one) => classes.includes(one)) && speaksOf(limit, part));
}

/** Depth at which moulded wear indicators stand. */
export const wearIndicators = {
  us: { printed: in32(2), source: 'FMVSS 109 and 119 (NHTSA interpretation 11497, 1996)' },
  france: {
    printed: mm(1.6),
    toleranceMm: [0, 0.6],
    source: 'JORFARTI000038987859',
  },
} as const;
