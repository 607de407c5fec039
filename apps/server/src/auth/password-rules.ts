import { foldKey } from '@holdfast/domain';
import { commonBeginnings, commonPasswords, keyboardRows } from './common-passwords.js';

export type PasswordProblem = 'password.tooShort' | 'password.tooLong' | 'password.common' | 'password.context';

/** NIST SP 800-63B-4, 3.1.1.2: at least 15 where the password is the only factor. Counted in code points after NFC. */
export const leastSigns = 15;
/** Long enough for every sentence, short enough to hash. */
export const mostSigns = 256;

/**
 * What is wrong with a new password, or null. Length, what everybody tries first, and what is little more than a word of
 * the place (`context`: the names of person and shop; the program's own is added). No rules about kinds of signs and no
 * expiry: the same source forbids them.
 */
export function passwordProblem(password: string, context: readonly string[]): PasswordProblem | null {
  const normal = password.normalize('NFC');
  const length = Array.from(normal).length;
  if (length < leastSigns) return 'password.tooShort';
  if (length > mostSigns) return 'password.tooLong';
  const folded = foldKey(normal);
  if (isCommon(folded)) return 'password.common';
  if (isOfThePlace(folded, [...context, 'holdfast'].map(foldKey))) return 'password.context';
  return null;
}

function isCommon(folded: string): boolean {
  const letters = folded.replace(/^\d+|\d+$/g, '');
  return (
    commonPasswords.has(folded) ||
    commonPasswords.has(letters) ||
    commonBeginnings.some((word) => letters === word || isRepeat(letters, word)) ||
    isRepetition(folded) ||
    isRun(folded) ||
    keyboardRows.some((row) => (row + row).includes(folded) || (reversed(row) + reversed(row)).includes(folded))
  );
}

/** One piece of up to six signs, again and again, cut off anywhere. */
function isRepetition(text: string): boolean {
  return [1, 2, 3, 4, 5, 6].some((size) => isRepeat(text, text.slice(0, size)));
}

function isRepeat(text: string, piece: string): boolean {
  return (
    piece !== '' && text.length > piece.length && piece.repeat(Math.ceil(text.length / piece.length)).startsWith(text)
  );
}

/** 1234567890123456, ABCDEFGHIJKLMNOP and the same backwards. */
function isRun(text: string): boolean {
  const runs = ['01234567890123456789012345678901234567890', 'ABCDEFGHIJKLMNOPQRSTUVWXYZABCDEFGHIJKLMNOPQRSTUVWXYZ'];
  return runs.some((run) => run.includes(text) || reversed(run).includes(text));
}

/** What is left once the words of the place, the most common words and digits are taken out has to stand by itself. */
function isOfThePlace(folded: string, names: readonly string[]): boolean {
  const words = names.filter((name) => name.length >= 3).sort((a, b) => b.length - a.length);
  if (!words.some((word) => folded.includes(word))) return false;
  const rest = [...words, ...commonBeginnings]
    .reduce((text, word) => text.replaceAll(word, ''), folded)
    .replace(/\d+/g, '');
  return rest.length < 6;
}

function reversed(text: string): string {
  return Array.from(text).reverse().join('');
}
