import type { ReactElement } from 'react';

import './plate.css';
import { useText } from '../text/use-text.js';
import { Patch } from './marks/patch.js';

type PlateProps = {
  /** The plate or, where customers look on, the job number. */
  readonly plate: string;
  /** Temporary fixes on the vehicle; the slot for the patch is there at 0 too, so that nothing shifts. */
  readonly fixCount: number;
  readonly size?: 'normal' | 'large';
};

/** A vehicle's plate with the slot for the stitched patch beside it. */
export const Plate = ({ plate, fixCount, size = 'normal' }: PlateProps): ReactElement => {
  const { t } = useText();
  return (
    <span className={`hf-plate hf-plate-${size}`}>
      <span className="hf-plate-text hf-code">{plate}</span>
      <span className="hf-patch-slot">
        {fixCount > 0 && (
          <Patch count={fixCount} title={t('mark.patch', { count: fixCount })} size={size === 'large' ? 44 : 28} />
        )}
      </span>
    </span>
  );
};
