import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { said } from './typed.js';

type StopFormProps = {
  readonly clock: { readonly id: string; readonly version: number };
  readonly title: string;
  readonly jobId: string;
  readonly onClose: () => void;
};

/** A clock stops, with what is loose, open or next for whoever starts after. */
export const StopForm = ({ clock, title, jobId, onClose }: StopFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [handover, setHandover] = useState('');
  const send = async (): Promise<void> => {
    const input = { clockId: clock.id, version: clock.version, handover: said(handover) };
    if (await sending.run('stopWork', input, { text: 'piece.done.stop', values: { title } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.stop.heading', { title })}
      command="stopWork"
      act={t('piece.stop.act')}
      sending={sending}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <TextArea label={t('piece.stop.handover')} hint={t('piece.stop.hint')} value={handover} onChange={setHandover} />
    </FormSheet>
  );
};
