/**
 * The form of a vehicle identification number: 17 characters, letters and digits without I, O and Q. Sources: 49 CFR
 * 565.13(b) and (g), ISO 3779. Small letters are read as capitals; anything outside ASCII is refused, because a Cyrillic
 * "Х" or a full-width digit looks right and is another character.
 */
export const vinLength = 17;

/** A VIN as it was typed or scanned, without blanks around it, in capitals. Only a to z are raised: "ſ" is no S. */
export function normaliseVin(text: string): string {
  return text.trim().replace(/[a-z]/g, (letter) => letter.toUpperCase());
}

export type VinFormFault =
  | { readonly code: 'empty' }
  | { readonly code: 'length'; readonly characters: number }
  /** I, O and Q are never in a VIN; positions from 1 */
  | { readonly code: 'lettersIOQ'; readonly positions: readonly number[] }
  | { readonly code: 'characters'; readonly positions: readonly number[] };

/** What is wrong with the form; empty for a well-formed VIN. Blanks count as characters here: see `normaliseVin`. */
export function faultsInVinForm(text: string): readonly VinFormFault[] {
  if (text === '') return [{ code: 'empty' }];
  const characters = Array.from(text);
  const faults: VinFormFault[] = [];
  if (characters.length !== vinLength) faults.push({ code: 'length', characters: characters.length });
  const places = (pattern: RegExp): number[] => characters.flatMap((one, at) => (pattern.test(one) ? [at + 1] : []));
  const lettersIOQ = places(/^[IOQioq]$/);
  if (lettersIOQ.length > 0) faults.push({ code: 'lettersIOQ', positions: lettersIOQ });
  const others = places(/^[^A-Za-z0-9]$/u);
  if (others.length > 0) faults.push({ code: 'characters', positions: others });
  return faults;
}

/** 17 characters of the VIN alphabet, in either case. Says nothing about whether such a vehicle exists. */
export function hasVinForm(text: string): boolean {
  return faultsInVinForm(text).length === 0;
}
