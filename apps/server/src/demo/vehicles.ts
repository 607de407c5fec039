/** What the vehicles of the demo are, and their plates. No make is named. */
import type { CommandInputs } from '@holdfast/domain';

export type Kind = Pick<
  CommandInputs['addVehicle'],
  'description' | 'kind' | 'drive' | 'curbKg' | 'grossKg' | 'curbSource' | 'grossSource'
>;

const papers = { curbSource: 'papers', grossSource: 'plate' } as const;
export const van: Kind = {
  description: 'Delivery van, long, white',
  kind: 'light',
  drive: 'combustion',
  curbKg: 2060,
  grossKg: 3500,
  ...papers,
};
export const electricVan: Kind = {
  description: 'Delivery van, short, electric',
  kind: 'light',
  drive: 'electric',
  curbKg: 2180,
  grossKg: 3050,
  ...papers,
};
export const estate: Kind = {
  description: 'Estate car, diesel',
  kind: 'light',
  drive: 'combustion',
  curbKg: 1540,
  grossKg: 2130,
  ...papers,
};
export const electricEstate: Kind = {
  description: 'Estate car, electric',
  kind: 'light',
  drive: 'electric',
  curbKg: 2010,
  grossKg: 2560,
  ...papers,
};
export const tipper: Kind = {
  description: 'Tipper, crew cab, yellow',
  kind: 'light',
  drive: 'combustion',
  curbKg: 2640,
  grossKg: 3500,
  ...papers,
};
export const sweeper: Kind = {
  description: 'Compact road sweeper',
  kind: 'heavy',
  drive: 'combustion',
  curbKg: 3920,
  grossKg: 6000,
  ...papers,
};

/** What the people of the town drive; of some nobody knows what they weigh. */
export const townKinds: readonly Kind[] = [
  estate,
  { ...estate, description: 'Estate car, petrol', curbKg: 1490, grossKg: 2040 },
  { ...estate, description: 'Estate car, hybrid', drive: 'hybrid', curbKg: 1690, grossKg: 2240 },
  electricEstate,
  { description: 'Small car, petrol', kind: 'light', drive: 'combustion', curbKg: 1080, grossKg: 1520, ...papers },
  { description: 'Hatchback, petrol', kind: 'light', drive: 'combustion', curbKg: 1290, grossKg: 1780, ...papers },
  { description: 'Camper on a van', kind: 'light', drive: 'combustion', curbKg: 2870, curbSource: 'told' },
];

/** A pattern that no country issues: two letters of the harbour, three digits, one letter. */
export function plateOf(number: number): string {
  const letters = 'ABCDEFGHJKLMNPRSTVWXYZ';
  return `HB ${String(100 + ((number * 37) % 900))} ${letters.charAt(number % letters.length)}`;
}
