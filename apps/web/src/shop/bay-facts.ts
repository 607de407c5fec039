import { type EquipmentItem, equipmentKinds, type massUnits, type Row } from '@holdfast/domain';
import type { CommandInputs } from '@holdfast/domain';

import { decimalOf, said, wholeOf } from '../pieces/typed.js';

type MassUnit = (typeof massUnits)[number];
type Kind = (typeof equipmentKinds)[number];
type Outcome = 'passed' | 'failed';

/** What stands in the fields of a bay: text as typed, lengths in millimetres. */
export type BayTyped = {
  readonly spots: string;
  readonly equipment: Readonly<Partial<Record<Kind, Omit<EquipmentItem, 'kind'>>>>;
  readonly capacity: string;
  readonly capacityUnit: MassUnit;
  readonly maxLengthMm: string;
  readonly maxHeightMm: string;
  readonly maxWheelbaseMm: string;
  readonly inspectedOn: string;
  readonly inspectionOutcome: Outcome;
  readonly inspectionIntervalMonths: string;
  readonly outOfUse: boolean;
  readonly outOfUseWords: string;
};

const text = (value: number | string | null): string => (value === null ? '' : String(value));

const nothing = {
  spots: 1,
  equipment: [{ kind: 'flat', inUse: true, grips: null }],
  capacity: null,
  maxLengthMm: null,
  maxHeightMm: null,
  maxWheelbaseMm: null,
  inspectedOn: null,
  inspectionOutcome: null,
  inspectionIntervalMonths: null,
  outOfUse: false,
  outOfUseWords: null,
} as const satisfies Partial<Row<'baySpec'>>;

/** The facts of a bay as fields; of none: one flat spot, capacity in `unit`. */
export const typedFacts = (spec: Row<'baySpec'> | null, unit: MassUnit): BayTyped => {
  const facts = spec ?? { ...nothing, capacityUnit: unit };
  return {
    spots: text(facts.spots),
    equipment: Object.fromEntries(facts.equipment.map(({ kind, inUse, grips }) => [kind, { inUse, grips }])),
    capacity: text(facts.capacity),
    capacityUnit: facts.capacityUnit,
    maxLengthMm: text(facts.maxLengthMm),
    maxHeightMm: text(facts.maxHeightMm),
    maxWheelbaseMm: text(facts.maxWheelbaseMm),
    inspectedOn: text(facts.inspectedOn),
    inspectionOutcome: facts.inspectionOutcome ?? 'passed',
    inspectionIntervalMonths: text(facts.inspectionIntervalMonths),
    outOfUse: facts.outOfUse,
    outOfUseWords: text(facts.outOfUseWords),
  };
};

type Facts = NonNullable<CommandInputs['changeBay']['facts']>;

const equipmentOf = (typed: BayTyped): EquipmentItem[] =>
  equipmentKinds.flatMap((kind) => {
    const item = typed.equipment[kind];
    return item === undefined ? [] : [{ kind, ...item }];
  });

/** The facts as the wire wants them; null while a field holds what is none. */
export const factsOf = (typed: BayTyped): Facts | null => {
  const numbers = {
    maxLengthMm: wholeOf(typed.maxLengthMm),
    maxHeightMm: wholeOf(typed.maxHeightMm),
    maxWheelbaseMm: wholeOf(typed.maxWheelbaseMm),
    inspectionIntervalMonths: wholeOf(typed.inspectionIntervalMonths),
  };
  const spots = wholeOf(typed.spots);
  const capacity = decimalOf(typed.capacity);
  if (typeof spots !== 'number' || spots < 1 || capacity === null || Object.values(numbers).includes(null)) return null;
  const whole = numbers as { readonly [K in keyof typeof numbers]: number | undefined };
  const inspected =
    typed.inspectedOn === '' ? {} : { inspectedOn: typed.inspectedOn, inspectionOutcome: typed.inspectionOutcome };
  return {
    spots,
    equipment: equipmentOf(typed),
    ...(capacity === undefined ? {} : { capacity }),
    capacityUnit: typed.capacityUnit,
    ...whole,
    ...inspected,
    outOfUse: typed.outOfUse,
    outOfUseWords: typed.outOfUse ? said(typed.outOfUseWords) : undefined,
  };
};
