import { rowsOf, type Board } from '@holdfast/board';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useBoard } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { said } from './typed.js';
import { cautionWords } from './vehicle-head.js';

/** What was named for this visit, the last last. */
export const namedPoints = (board: Board, jobId: string) =>
  rowsOf(board)
    .list('liftingPoints', (one) => one.jobId === jobId)
    .sort((a, b) => a.effectiveAt - b.effectiveAt);

type PointsFormProps = {
  readonly jobId: string;
  readonly vehicle: { readonly id: string; readonly plate: string };
  readonly onClose: () => void;
};

/** Owner or manager names which points of the vehicle are used on this visit. */
export const LiftingPointsForm = ({ jobId, vehicle, onClose }: PointsFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const cautions = rowsOf(useBoard()).list(
    'caution',
    (one) => one.vehicleId === vehicle.id && one.code === 'liftingPoint' && one.endedAt === null,
  );
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const done = { text: 'points.done', values: { plate: vehicle.plate } } as const;
    if (await sending.run('nameLiftingPoints', { jobId, words: words.trim() }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('points.heading', { plate: vehicle.plate })}
      command="nameLiftingPoints"
      act={t('points.act')}
      sending={sending}
      ready={said(words) !== undefined}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <div className="hf-care">
        {cautions.map((caution) => (
          <p key={caution.id}>{cautionWords(caution, t)}</p>
        ))}
        <p className="hf-small">{t('points.defer')}</p>
      </div>
      <TextArea label={t('points.words')} hint={t('points.hint')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};
