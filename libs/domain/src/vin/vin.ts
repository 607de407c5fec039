/**
 * Vehicle identification numbers. A doubtful one never stops anything (rule 15): it is kept as it was read and flagged.
 */

/** Letters and digits of a VIN: no I, O or Q. Source: 49 CFR 565.15, which uses the characters of ISO 3779. */
const vin = /^[A-HJ-NPR-Z0-9]{17}$/;

/** 17 characters of the VIN alphabet, in either case. Says nothing about whether such a vehicle exists. */
export function looksLikeVin(text: string): boolean {
  return vin.test(text.toUpperCase());
}
