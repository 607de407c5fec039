import type { CautionCode } from '@holdfast/domain';
import type { ReactElement, ReactNode } from 'react';

import './pieces.css';
import { useText, type Translate } from '../text/use-text.js';
import { CautionSlot, type ShownCaution } from '../ui/caution-slot.js';
import { Plate } from '../ui/plate.js';

type CautionRow = { readonly id: string; readonly code: CautionCode; readonly words: string | null };

const highVoltage: readonly CautionCode[] = ['highVoltageLive', 'highVoltageDead', 'electricDrive'];

/** A caution in words: what it is and what was written with it. */
export const cautionWords = ({ code, words }: Omit<CautionRow, 'id'>, t: Translate): string => {
  if (code === 'other') return words ?? t('word.caution.other');
  const kind = t(`word.caution.${code}`);
  return words === null ? kind : `${kind}: ${words}`;
};

/** Open cautions as the slot and the list show them. */
export const shownCautions = (cautions: readonly CautionRow[], t: Translate): ShownCaution[] =>
  cautions.map((caution) => ({
    id: caution.id,
    kind: highVoltage.includes(caution.code) ? 'highVoltage' : 'caution',
    words: cautionWords(caution, t),
  }));

type VehicleHeadProps = {
  readonly plate: string;
  readonly description: string;
  readonly cautions: readonly CautionRow[];
  readonly fixCount: number;
  readonly size?: 'normal' | 'large';
  /** Under the description: key, place, job. */
  readonly under?: ReactNode;
};

/** Caution slot, plate with its patch, and what vehicle it is: the same everywhere a vehicle is shown. */
export const VehicleHead = (props: VehicleHeadProps): ReactElement => {
  const { t } = useText();
  return (
    <div className={props.size === 'large' ? 'hf-vehicle-head hf-vehicle-head-alone' : 'hf-vehicle-head'}>
      <CautionSlot cautions={shownCautions(props.cautions, t)} />
      <Plate plate={props.plate} fixCount={props.fixCount} size={props.size ?? 'normal'} />
      <div className="hf-vehicle-head-words">
        <span>{props.description}</span>
        {props.under !== undefined && <span className="hf-quiet hf-small">{props.under}</span>}
      </div>
    </div>
  );
};
