import { erasedText } from '@holdfast/domain';

import { useText, type Translate } from '../text/use-text.js';

/** A name as people read it: of somebody whose personal data were erased, that they were. */
export const nameWords = (name: string, t: Translate): string => (name === erasedText ? t('records.erased') : name);

export const useNameWords = (): ((name: string) => string) => {
  const { t } = useText();
  return (name) => nameWords(name, t);
};
