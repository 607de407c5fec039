import { useEffect, useState, type ReactElement } from 'react';

import './undo-bar.css';
import { useText } from '../text/use-text.js';
import { Button } from './button.js';
import { useUndo, withdrawUndo, type UndoOffer } from './undo.js';

const undoSeconds = 10;

const Offer = ({ offer }: { readonly offer: UndoOffer }): ReactElement => {
  const { t } = useText();
  const [left, setLeft] = useState(undoSeconds);
  const [held, setHeld] = useState(false);
  useEffect(() => {
    if (held) return undefined;
    const timer = setTimeout(() => {
      if (left > 1) setLeft(left - 1);
      else withdrawUndo();
    }, 1000);
    return () => {
      clearTimeout(timer);
    };
  }, [left, held]);
  return (
    <div
      className="hf-undo"
      onFocus={() => {
        setHeld(true);
      }}
      onBlur={() => {
        setHeld(false);
      }}
    >
      <p>{offer.sentence}</p>
      <Button
        look="frame"
        onPress={() => {
          offer.undo();
          withdrawUndo();
        }}
      >
        {t('undo.label')}
      </Button>
      <span className="hf-undo-left" aria-hidden="true">
        {t('undo.left', { seconds: left })}
      </span>
    </div>
  );
};

/** Stands once in the shell: the last act, with Undo for ten seconds. The seconds wait while the bar has the focus. */
export const UndoBar = (): ReactElement => {
  const { offer, turn } = useUndo();
  return (
    <div className="hf-undo-place" role="status">
      {offer !== null && <Offer key={turn} offer={offer} />}
    </div>
  );
};
