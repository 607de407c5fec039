/** Which nut goes with which bolt. Source: ISO 898-2. A nut of a higher class than needed is allowed, a lower one never. */
import { type PropertyClass, propertyClasses } from './strength.js';

export const nutClasses = ['04', '05', '5', '6', '8', '9', '10', '12'] as const;
export type NutClass = (typeof nutClasses)[number];
export type NutStyle = 'style1' | 'style2' | 'thin';

/** The highest bolt class that the nut class mates with; thin nuts have none. */
const highestBolt: Readonly<Record<NutClass, PropertyClass | null>> = {
  '04': null,
  '05': null,
  '5': '5.8',
  '6': '6.8',
  '8': '8.8',
  '9': '9.8',
  '10': '10.9',
  '12': '12.9',
};

export type NutDoubt = 'thinNut' | 'nutClassTooLow' | 'notMadeInStyle';

/**
 * Whether the pair is allowed. `diameterMm` decides where a class ends: regular nuts of style 1 are class 12 up to M16
 * only, and class 9 is made in style 2 only.
 */
export function pairNut(
  bolt: PropertyClass,
  nut: { readonly nutClass: NutClass; readonly style: NutStyle },
  diameterMm: number,
):
  | { readonly pairs: true }
  | { readonly pairs: false; readonly doubt: NutDoubt; readonly highest: PropertyClass | null } {
  const highest = highestBolt[nut.nutClass];
  if (highest === null || nut.style === 'thin') return { pairs: false, doubt: 'thinNut', highest: null };
  const madeInStyle1 = nut.nutClass !== '9' && !(nut.nutClass === '12' && diameterMm > 16);
  if (nut.style === 'style1' && !madeInStyle1) return { pairs: false, doubt: 'notMadeInStyle', highest };
  if (propertyClasses.indexOf(bolt) > propertyClasses.indexOf(highest)) {
    return { pairs: false, doubt: 'nutClassTooLow', highest };
  }
  return { pairs: true };
}
