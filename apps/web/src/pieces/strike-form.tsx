import type { CommandInputs } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet, Opener } from './form-sheet.js';
import { said } from './typed.js';

type Entry = {
  readonly table: CommandInputs['strikeEntry']['table'];
  readonly id: string;
  readonly version: number;
};

const StrikeForm = (props: { readonly entry: Entry; readonly onClose: () => void }): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    if (await sending.run('strikeEntry', { ...props.entry, words }, { text: 'piece.done.strike' })) props.onClose();
  };
  return (
    <FormSheet
      heading={t('piece.strike.heading')}
      command="strikeEntry"
      act={t('piece.strike.act')}
      sending={sending}
      ready={said(words) !== undefined}
      onSend={() => void send()}
      onClose={props.onClose}
    >
      <p>{t('piece.strike.means')}</p>
      <TextArea label={t('piece.strike.words')} value={words} onChange={setWords} rows={2} isRequired />
    </FormSheet>
  );
};

/** A wrong entry counts nowhere any more; it stays readable among what was put right. */
export const StrikeOpener = ({ entry, about }: { readonly entry: Entry; readonly about: string }): ReactElement => {
  const { t } = useText();
  return (
    <Opener label={t('piece.strike')} command="strikeEntry" look="plain" about={about}>
      {(close) => <StrikeForm entry={entry} onClose={close} />}
    </Opener>
  );
};
