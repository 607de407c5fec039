import './placing.css';
import { useState, type ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { optionsOf } from './options.js';
import type { Moving } from './placing.js';
import { said } from './typed.js';

export type MovedHowState = {
  readonly how: 'dollies' | 'towed' | null;
  readonly name: string;
  readonly setHow: (how: 'dollies' | 'towed' | null) => void;
  readonly setName: (name: string) => void;
  /** As the wire wants it; empty while nothing was said. */
  readonly moving: Moving;
};

export const useMovedHow = (): MovedHowState => {
  const [how, setHow] = useState<'dollies' | 'towed' | null>(null);
  const [name, setName] = useState('');
  const movedByName = said(name);
  const moving: Moving = how === null ? {} : { movedHow: how, ...(movedByName === undefined ? {} : { movedByName }) };
  return { how, name, setHow, setName, moving };
};

/** A vehicle that does not roll moves on dollies or is towed, and somebody is named for it. */
export const MovedHow = ({ state }: { readonly state: MovedHowState }): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-moved-how">
      <Choice
        label={t('placing.movedHow')}
        value={state.how}
        onChange={state.setHow}
        options={optionsOf(['dollies', 'towed'] as const, (how) => t(`placing.moved.${how}`))}
      />
      <Field label={t('placing.movedBy')} value={state.name} onChange={state.setName} />
    </div>
  );
};
