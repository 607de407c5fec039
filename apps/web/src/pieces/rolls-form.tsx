import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { FormSheet } from './form-sheet.js';
import { Tick } from './ticks.js';

type RollsFormProps = {
  readonly vehicle: {
    readonly id: string;
    readonly plate: string;
    readonly rolls: boolean;
    readonly mayBeDriven: boolean;
  };
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** Whether a vehicle rolls and whether it may be driven, now. */
export const RollsForm = ({ vehicle, jobId, onClose }: RollsFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [rolls, setRolls] = useState(vehicle.rolls);
  const [mayBeDriven, setMayBeDriven] = useState(vehicle.mayBeDriven);
  const send = async (): Promise<void> => {
    const input = { vehicleId: vehicle.id, rolls, mayBeDriven };
    if (await sending.run('recordRolls', input, { text: 'piece.done.rolls', values: { plate: vehicle.plate } }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('piece.rolls.heading', { plate: vehicle.plate })}
      command="recordRolls"
      act={t('piece.rolls.act')}
      sending={sending}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Tick label={t('piece.rolls.rolls')} value={rolls} onChange={setRolls} />
      <Tick label={t('piece.rolls.mayBeDriven')} value={mayBeDriven} onChange={setMayBeDriven} />
      <p className="hf-quiet hf-small">{t('piece.rolls.defer')}</p>
    </FormSheet>
  );
};
