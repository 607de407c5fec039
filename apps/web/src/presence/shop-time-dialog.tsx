import type { Board } from '@holdfast/board';
import { useState, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { Dialog } from '../ui/layers/dialog.js';
import { lastWords } from './last-words.js';
import type { Telling } from './use-saying.js';

type ShopTimeProps = {
  readonly board: Board;
  readonly personId: string;
  readonly telling: Telling;
  readonly onClose: () => void;
};

/** What the shop time is for: one of the last words in one tap, or another one typed. */
export const ShopTimeDialog = ({ board, personId, telling, onClose }: ShopTimeProps): ReactElement => {
  const { t } = useText();
  const [words, setWords] = useState('');
  const { sending } = telling;
  const usual = [t('presence.usual.cleaning'), t('presence.usual.fetching'), t('presence.usual.training')];
  const begin = async (what: string | undefined): Promise<void> => {
    if (what !== undefined && (await telling.say({ kind: 'shopTime', words: what }))) onClose();
  };
  return (
    <Dialog
      isOpen
      onClose={onClose}
      heading={t('presence.shopTime.heading')}
      acts={
        <Button
          look="ink"
          command="recordAttendance"
          isDisabled={said(words) === undefined}
          isPending={sending.pending}
          onPress={() => void begin(said(words))}
        >
          {t('presence.shopTime.act')}
        </Button>
      }
    >
      <div className="hf-acts" role="group" aria-label={t('presence.shopTime.last')}>
        {lastWords(board, personId, usual).map((one) => (
          <Button key={one} command="recordAttendance" isPending={sending.pending} onPress={() => void begin(one)}>
            {one}
          </Button>
        ))}
      </div>
      <Field label={t('presence.shopTime.words')} value={words} onChange={setWords} />
      <Refusal problem={sending.problem} />
    </Dialog>
  );
};
