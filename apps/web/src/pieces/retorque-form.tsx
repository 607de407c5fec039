import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { type DistanceUnit, OdometerField } from './odometer-fields.js';
import { TorqueFields, useTorque } from './torque-fields.js';
import { said, wholeOf } from './typed.js';

type RetorqueProps = {
  readonly followUp: {
    readonly id: string;
    readonly version: number;
    readonly title: string;
    readonly distanceUnit: DistanceUnit;
  };
  readonly plate: string;
  readonly onClose: () => void;
};

/** The vehicle dropped in and its wheels were tightened again: no bay, no visit. */
export const RetorqueForm = ({ followUp, plate, onClose }: RetorqueProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const torque = useTorque();
  const [odometer, setOdometer] = useState('');
  const [words, setWords] = useState('');
  const reading = wholeOf(odometer);
  const send = async (): Promise<void> => {
    if (torque.input === null) return;
    const of = { followUpId: followUp.id, version: followUp.version };
    const input = { ...of, ...torque.input, odometer: reading ?? undefined, words: said(words) };
    if (await sending.run('recordRetorque', input, { text: 'piece.done.retorque', values: { plate } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.retorque.heading', { plate })}
      command="recordRetorque"
      act={t('piece.retorque.act')}
      sending={sending}
      ready={torque.input !== null && reading !== null}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-quiet">{followUp.title}</p>
      <TorqueFields torque={torque} />
      <OdometerField
        label={t('piece.odometer.value')}
        value={odometer}
        onChange={setOdometer}
        unit={followUp.distanceUnit}
      />
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
