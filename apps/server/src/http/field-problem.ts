import { isTextKey, say, type Locale } from '@holdfast/contract';
import { leastSigns, mostSigns, type PasswordProblem } from '../auth/password-rules.js';
import { Problem } from './problem.js';

/** Fields that fit their schema and still cannot be taken, each with its words. */
export function fieldProblem(
  fields: readonly { readonly pointer: string; readonly code: PasswordProblem }[],
  locale: Locale,
): Problem {
  return new Problem('body.invalid', {
    errors: fields.map(({ pointer, code }) => ({ pointer, code, message: wordsFor(code, locale) })),
  });
}

function wordsFor(code: string, locale: Locale): string {
  return isTextKey(code) ? say(locale, code, { least: leastSigns, most: mostSigns }) : code;
}
