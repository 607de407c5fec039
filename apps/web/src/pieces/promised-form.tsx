import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { FormSheet } from './form-sheet.js';

type PromisedFormProps = {
  readonly job: { readonly id: string; readonly version: number; readonly number: number };
  /** Epoch ms; null: none was promised. */
  readonly promisedAt: number | null;
  readonly onClose: () => void;
};

/** Another promised time, or none. */
export const PromisedForm = ({ job, promisedAt, onClose }: PromisedFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [at, setAt] = useState<number | null>(promisedAt);
  const send = async (to: number | null): Promise<void> => {
    const input = { jobId: job.id, version: job.version, promisedAt: to === null ? null : new Date(to).toISOString() };
    const done = { text: 'piece.done.promised', values: { number: job.number } } as const;
    if (await sending.run('changePromisedTime', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.promised.heading', { number: job.number })}
      command="changePromisedTime"
      act={t('piece.promised.act')}
      sending={sending}
      ready={at !== null}
      jobId={job.id}
      onSend={() => void send(at)}
      onClose={onClose}
    >
      <DateTimeField label={t('piece.promised.at')} value={at} onChange={setAt} />
      {promisedAt !== null && (
        <Button size="small" command="changePromisedTime" onPress={() => void send(null)}>
          {t('piece.promised.none')}
        </Button>
      )}
    </FormSheet>
  );
};
