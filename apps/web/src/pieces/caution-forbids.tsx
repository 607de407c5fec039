import { isTextKey } from '@holdfast/contract';
import type { CautionCode } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useText, type Translate } from '../text/use-text.js';

/** What a caution forbids as long as it stands, in the words of the caution table; null where it forbids nothing. */
export const forbidsWords = (code: CautionCode, t: Translate): string | null => {
  const key = `caution.${code}.forbids`;
  return isTextKey(key) ? t(key) : null;
};

/** The same beside the caution; nothing where it forbids nothing. */
export const CautionForbids = ({ code }: { readonly code: CautionCode }): ReactElement | null => {
  const { t } = useText();
  const words = forbidsWords(code, t);
  return words === null ? null : <span className="hf-small hf-caution-forbids">{words}</span>;
};
