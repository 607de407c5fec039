import type { JobView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet, Opener } from '../pieces/form-sheet.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';

const hourMs = 3_600_000;

type UndoFormProps = { readonly view: JobView; readonly onClose: () => void };

const UndoForm = ({ view, onClose }: UndoFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const { job, vehicle } = view;
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const done = { text: 'handBack.undone', values: { number: job.number } } as const;
    if (await sending.run('undoHandBack', { jobId: job.id, words: words.trim() }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('handBack.undoHeading', { plate: vehicle.plate })}
      command="undoHandBack"
      act={t('handBack.undoAct')}
      sending={sending}
      ready={said(words) !== undefined}
      jobId={job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('handBack.undoUnder')}</p>
      <TextArea label={t('handBack.undoWords')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};

/** Within the hour the vehicle is here again, and its sheet is void; afterwards it comes back as a new visit. */
export const UndoHandBack = ({ view }: { readonly view: JobView }): ReactElement | null => {
  const { t, format } = useText();
  const now = useNow();
  const endedAt = view.job.endedAt === null ? null : Date.parse(view.job.endedAt);
  if (endedAt === null || view.job.endedHow === 'cancelled' || now - endedAt > hourMs) return null;
  return (
    <>
      <Opener command="undoHandBack" label={t('handBack.undo')} size="normal">
        {(close) => <UndoForm view={view} onClose={close} />}
      </Opener>
      <span className="hf-quiet hf-small">{t('handBack.undoUntil', { at: format.moment(endedAt + hourMs, now) })}</span>
    </>
  );
};
