/** What comes in on ordinary days. Minutes are book minutes; prices are labour and parts as told, in the shop's currency. */
import type { CommandInputs } from '@holdfast/domain';
import type { SupplierKey } from './cast.js';

type Fix = Pick<
  CommandInputs['addTemporaryFix'],
  'kind' | 'standsInFor' | 'place' | 'heldWith' | 'system' | 'endedByWhat' | 'removedPieceAt'
>;

export interface TaskPart {
  readonly description: string;
  readonly number: string;
  readonly quantity: string;
  readonly unitPrice: string;
  readonly needed: 'beforeStart' | 'beforeRefit';
  readonly supplier: SupplierKey;
}

export interface Task {
  readonly concern: string;
  readonly conditions: string;
  readonly title: string;
  readonly minutes: number;
  readonly price: string;
  readonly where: 'lift' | 'rack' | 'floor';
  readonly skill?: 'highVoltage' | 'refrigerant';
  readonly only?: 'electric' | 'combustion';
  readonly part?: TaskPart;
  readonly finding?: {
    readonly place: string;
    readonly kind: 'wear' | 'toWatch' | 'nothingFound';
    readonly measure?: string;
    readonly unit?: string;
    readonly words?: string;
  };
  readonly caution?: 'brakesOpen' | 'noOil' | 'batteryOff' | 'onStands' | 'wheelsNotTorqued' | 'highVoltageDead';
  readonly fix?: Fix;
  /** Places of the wheels that come off for it. */
  readonly wheels?: readonly string[];
  /** What is found behind it. */
  readonly cause?: string;
}

export const tasks: readonly Task[] = [
  {
    concern: 'Service is due',
    conditions: 'By the book',
    title: 'Yearly service, oil and filters',
    minutes: 145,
    price: '260',
    where: 'lift',
    only: 'combustion',
    caution: 'noOil',
    finding: { place: 'Front tyres', kind: 'wear', measure: '3.8', unit: 'mm' },
  },
  {
    concern: 'Pulls to the left',
    conditions: 'Straight road, above 60 km/h',
    title: 'Measure and set the wheels',
    cause: 'Toe of the front axle out, left',
    minutes: 95,
    price: '120',
    where: 'rack',
    finding: { place: 'Front axle, left', kind: 'nothingFound', words: 'Ball joints without play' },
  },
  {
    concern: 'Grinds when braking',
    conditions: 'Cold, first braking in the morning',
    title: 'Front discs and pads',
    wheels: ['1L', '1R'],
    cause: 'Discs worn to a ridge, pads down to the carrier',
    minutes: 175,
    price: '390',
    where: 'lift',
    caution: 'brakesOpen',
    part: {
      description: 'Brake discs and pads, front axle, set',
      number: 'PN-4410',
      quantity: '1',
      unitPrice: '164.50',
      needed: 'beforeStart',
      supplier: 'pier',
    },
    finding: { place: 'Brake disc, front left', kind: 'wear', measure: '19.6', unit: 'mm' },
  },
  {
    concern: 'Starts badly',
    conditions: 'After a night outside, below 5 °C',
    title: 'Test charging and battery',
    cause: 'Battery does not hold what it is given',
    minutes: 80,
    price: '85',
    where: 'floor',
    caution: 'batteryOff',
    finding: { place: 'Battery', kind: 'toWatch', measure: '11.9', unit: 'V' },
  },
  {
    concern: 'Knocks over bumps, front',
    conditions: 'Cobbles on the quay, 30 km/h',
    title: 'Drop links, front, both',
    wheels: ['1L', '1R'],
    cause: 'Joints of the drop links have play',
    minutes: 110,
    price: '180',
    where: 'lift',
    part: {
      description: 'Drop link, front',
      number: 'PN-2207',
      quantity: '2',
      unitPrice: '31.20',
      needed: 'beforeRefit',
      supplier: 'pier',
    },
  },
  {
    concern: 'Heater stays cold',
    conditions: 'Long descent, idling',
    title: 'Find the fault in the heating',
    cause: 'Resistor of the blower burnt through',
    minutes: 160,
    price: '210',
    where: 'floor',
    part: {
      description: 'Blower resistor',
      number: 'CF-118',
      quantity: '1',
      unitPrice: '58',
      needed: 'beforeRefit',
      supplier: 'factors',
    },
  },
  {
    concern: 'Rattle underneath',
    conditions: 'Pulling away, cold',
    title: 'Exhaust mountings',
    cause: 'Rubber of the rear mounting torn',
    minutes: 95,
    price: '140',
    where: 'lift',
    part: {
      description: 'Exhaust mounting, rear',
      number: 'CF-730',
      quantity: '1',
      unitPrice: '22.40',
      needed: 'beforeRefit',
      supplier: 'factors',
    },
    fix: {
      kind: 'heldBy',
      standsInFor: 'Rear exhaust mounting',
      place: 'Exhaust, rear left',
      heldWith: 'Two turns of stainless strap',
      system: 'exhaust',
      endedByWhat: 'New rear mounting fitted',
    },
  },
  {
    concern: 'Rear door does not close flush',
    conditions: 'Always',
    title: 'Set the rear door and its latch',
    cause: 'Pin of the upper hinge worn',
    minutes: 130,
    price: '150',
    where: 'floor',
    finding: { place: 'Rear door, upper hinge', kind: 'wear', words: 'Pin worn' },
  },
  {
    concern: 'Warning lamp for the battery',
    conditions: 'Above 3000 rpm',
    title: 'Alternator',
    cause: 'Brushes worn out',
    minutes: 190,
    price: '540',
    where: 'lift',
    only: 'combustion',
    caution: 'batteryOff',
    part: {
      description: 'Alternator, rebuilt',
      number: 'PN-9001',
      quantity: '1',
      unitPrice: '289',
      needed: 'beforeStart',
      supplier: 'pier',
    },
  },
  {
    concern: 'Hums on the motorway',
    conditions: 'Above 80 km/h, louder in right bends',
    title: 'Wheel bearing, rear left',
    wheels: ['2L'],
    cause: 'Bearing rough, water behind the seal',
    minutes: 150,
    price: '310',
    where: 'lift',
    caution: 'wheelsNotTorqued',
    part: {
      description: 'Wheel bearing with hub, rear',
      number: 'CF-412',
      quantity: '1',
      unitPrice: '118',
      needed: 'beforeRefit',
      supplier: 'factors',
    },
  },
  {
    concern: 'Range has dropped',
    conditions: 'Since the cold weather',
    title: 'Measure the high-voltage battery',
    minutes: 120,
    price: '160',
    where: 'floor',
    skill: 'highVoltage',
    only: 'electric',
    caution: 'highVoltageDead',
    finding: { place: 'High-voltage battery', kind: 'toWatch', measure: '88', unit: '%' },
  },
  {
    concern: 'Cooling does not cool',
    conditions: 'Any warm day',
    title: 'Find and mend the leak, refill refrigerant',
    cause: 'Seal at the condenser leaks',
    minutes: 175,
    price: '330',
    where: 'floor',
    skill: 'refrigerant',
    only: 'combustion',
  },
  {
    concern: 'Mirror housing broken',
    conditions: 'Since a narrow lane',
    title: 'Mirror housing, right',
    minutes: 65,
    price: '130',
    where: 'floor',
    part: {
      description: 'Mirror housing, right, primed',
      number: 'LB-77R',
      quantity: '1',
      unitPrice: '64',
      needed: 'beforeStart',
      supplier: 'body',
    },
    fix: {
      kind: 'leftOpen',
      standsInFor: 'Mirror housing, right',
      place: 'Door mirror, right',
      heldWith: 'Weatherproof tape over the open back',
      system: 'glass',
      endedByWhat: 'Housing painted and fitted',
    },
  },
  {
    concern: 'Undertray hangs down',
    conditions: 'At any speed',
    title: 'Refasten the undertray',
    minutes: 55,
    price: '70',
    where: 'lift',
    fix: {
      kind: 'leftOff',
      standsInFor: 'Undertray, rear third',
      place: 'Underbody, behind the gearbox',
      system: 'body',
      endedByWhat: 'New undertray fitted',
      removedPieceAt: 'Loft, shelf 4',
    },
  },
];

/** Tasks that need no part: work for the days before today, so that the floor is not full of the past this morning. */
export const quickTasks = tasks.filter(
  (task) => task.part === undefined && task.fix === undefined && task.minutes <= 145 && task.skill === undefined,
);

export const extraWork = [
  { title: 'Wiper blades, front', minutes: 15, price: '48' },
  { title: 'Rear brake pads', minutes: 60, price: '190' },
  { title: 'Drive belt', minutes: 50, price: '135' },
  { title: 'Two tyres, front', minutes: 45, price: '260' },
] as const;
