import { readingSources } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { FormSheet } from './form-sheet.js';
import { type DistanceUnit, OdometerField } from './odometer-fields.js';
import { optionsOf } from './options.js';
import { wholeOf } from './typed.js';

type OdometerFormProps = {
  readonly vehicleId: string;
  readonly plate: string;
  readonly jobId?: string;
  readonly unit: DistanceUnit;
  readonly last?: { readonly value: number; readonly unit: DistanceUnit } | null;
  readonly onClose: () => void;
};

/** What the odometer shows, or that it cannot be read. A lower reading than before is kept and marked. */
export const OdometerForm = (props: OdometerFormProps): ReactElement => {
  const { vehicleId, plate, jobId, last = null, onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const [source, setSource] = useState<(typeof readingSources)[number]>('read');
  const [typed, setTyped] = useState('');
  const [unit, setUnit] = useState(last?.unit ?? props.unit);
  const value = wholeOf(typed);
  const isRead = source !== 'notReadable';
  const send = async (): Promise<void> => {
    const input = { vehicleId, jobId, unit, source, value: isRead ? (value ?? undefined) : undefined };
    if (await sending.run('recordOdometer', input, { text: 'piece.done.odometer', values: { plate } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.odometer.heading', { plate })}
      command="recordOdometer"
      act={t('piece.odometer.act')}
      sending={sending}
      ready={!isRead || typeof value === 'number'}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.odometer.source')}
        value={source}
        onChange={setSource}
        options={optionsOf(readingSources, (one) => t(`word.reading.${one}`))}
      />
      {isRead && (
        <OdometerField
          label={t('piece.odometer.value')}
          value={typed}
          onChange={setTyped}
          unit={unit}
          onUnit={setUnit}
          last={last}
        />
      )}
      {isRead && typeof value === 'number' && last !== null && last.unit === unit && value < last.value && (
        <p>{t('piece.odometer.lower')}</p>
      )}
    </FormSheet>
  );
};
