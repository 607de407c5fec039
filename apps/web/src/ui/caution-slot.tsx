import type { ReactElement } from 'react';

import './plate.css';
import { useText } from '../text/use-text.js';
import { CautionMark, type CautionKind } from './marks/caution-mark.js';

export type ShownCaution = {
  readonly id: string;
  readonly kind: CautionKind;
  /** The caution in words: "Do not start", "Lifting point front left not to be used". */
  readonly words: string;
};

/**
 * The slot that stands first in every row that shows a vehicle: empty, a black triangle, or the triangle with the flash;
 * high voltage always with its words. Reserved when empty.
 */
export const CautionSlot = ({ cautions }: { readonly cautions: readonly ShownCaution[] }): ReactElement => {
  const { t } = useText();
  const plain = cautions.filter((caution) => caution.kind === 'caution').map((caution) => caution.words);
  const live = cautions.filter((caution) => caution.kind === 'highVoltage').map((caution) => caution.words);
  return (
    <span className="hf-caution-slot">
      {live.length > 0 && (
        <CautionMark kind="highVoltage" title={[t('mark.highVoltage'), ...live].join('; ')} size={28} />
      )}
      {plain.length > 0 && <CautionMark kind="caution" title={plain.join('; ')} size={28} />}
      {live.length > 0 && (
        <span className="hf-caution-words" aria-hidden="true">
          {t('mark.highVoltage')}
        </span>
      )}
    </span>
  );
};

/** All cautions with their words, for the screens of one vehicle. */
export const CautionList = ({ cautions }: { readonly cautions: readonly ShownCaution[] }): ReactElement | null => {
  const { t } = useText();
  if (cautions.length === 0) return null;
  return (
    <ul className="hf-caution-list" aria-label={t('mark.cautions')}>
      {cautions.map((caution) => (
        <li key={caution.id}>
          <CautionMark kind={caution.kind} title={null} size={32} />
          {caution.words}
        </li>
      ))}
    </ul>
  );
};
