import type { Refusal } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import './placing.css';
import { Refusal as RefusalNotice } from '../live/refusal.js';
import type { Sending } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { NumberPad } from '../ui/fields/number-pad.js';
import { Sheet } from '../ui/layers/dialog.js';
import { Notice } from '../ui/notice.js';
import type { LoadSaid } from './placing.js';
import { useSentences } from './sentences.js';

type LoadQuestionProps = {
  readonly plate: string;
  readonly bay: string;
  /** Why the lift asks. */
  readonly asks: readonly Refusal[];
  /** What would still stand against it with that answer. */
  readonly judge: (said: LoadSaid) => readonly Refusal[];
  readonly sending: Sending;
  /** What the answer sends. */
  readonly command?: 'takeIntoBay' | 'swapBays';
  readonly onPlace: (said: LoadSaid) => void;
  readonly onClose: () => void;
};

/** "Loaded or empty?", asked at a lift; the answer is that of the person who is signed in. */
export const LoadQuestion = (props: LoadQuestionProps): ReactElement => {
  const { t } = useText();
  const { command = 'takeIntoBay' } = props;
  const sentences = useSentences();
  const [isLoaded, setLoaded] = useState(false);
  const [kilograms, setKilograms] = useState('');
  const said: LoadSaid = { loaded: true, ...(kilograms === '' ? {} : { loadKg: Number(kilograms) }) };
  const against = isLoaded ? props.judge(said) : [];
  return (
    <Sheet
      isOpen
      onClose={props.onClose}
      heading={t('placing.load.heading', { plate: props.plate, bay: props.bay })}
      closeLabel={t('placing.putBack')}
      acts={
        isLoaded && (
          <Button
            look="ink"
            command={command}
            isDisabled={against.length > 0}
            isPending={props.sending.pending}
            onPress={() => {
              props.onPlace(said);
            }}
          >
            {t('placing.load.placeLoaded')}
          </Button>
        )
      }
    >
      <p>{props.asks.map(sentences.refusal).join(' ')}</p>
      <div className="hf-acts">
        <Button
          size="act"
          command={command}
          isPending={props.sending.pending}
          onPress={() => {
            props.onPlace({ loaded: false });
          }}
        >
          {t('placing.load.empty')}
        </Button>
        <Button
          size="act"
          pressed={isLoaded}
          onPress={() => {
            setLoaded(true);
          }}
        >
          {t('placing.load.loaded')}
        </Button>
      </div>
      {isLoaded && (
        <>
          <NumberPad
            label={t('placing.load.kilograms')}
            value={kilograms}
            onChange={setKilograms}
            unit="kg"
            units={[{ value: 'kg', label: 'kg' }]}
            onDone={() => {
              if (against.length === 0) props.onPlace(said);
            }}
          />
          {against.length > 0 && (
            <Notice kind="note" lines={against.map((refusal) => ({ sentence: sentences.refusal(refusal) }))} />
          )}
        </>
      )}
      <p className="hf-quiet hf-small">{t('placing.lift')}</p>
      <RefusalNotice problem={props.sending.problem} />
    </Sheet>
  );
};
