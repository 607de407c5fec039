/**
 * Vehicle identification numbers. A doubtful one never stops anything (rule 15): it is kept as it was read and flagged.
 * What a VIN is, is known in `@holdfast/vehicle-facts`.
 */
import { hasVinForm } from '@holdfast/vehicle-facts';

/** 17 characters of the VIN alphabet, in either case. Says nothing about whether such a vehicle exists. */
export function looksLikeVin(text: string): boolean {
  return hasVinForm(text);
}
