import { wouldRefuse, type Board, type Visit } from '@holdfast/board';
import { lineEnded, type Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { newId } from '../live/send.js';
import { useSend, type Sending } from '../live/use-send.js';
import { useBy } from '../pieces/placing.js';
import { useSentences } from '../pieces/sentences.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Sheet } from '../ui/layers/dialog.js';

type StartProps = { readonly board: Board; readonly visit: Visit; readonly now: number; readonly onClose: () => void };

type LineProps = {
  readonly board: Board;
  readonly line: Row<'workLine'>;
  readonly now: number;
  readonly sending: Sending;
  readonly onStart: (line: Row<'workLine'>, already: boolean) => void;
};

const StartLine = ({ board, line, now, sending, onStart }: LineProps): ReactElement => {
  const { t, format } = useText();
  const by = useBy();
  const sentences = useSentences();
  const refusals = wouldRefuse(board, 'startWork', { lineId: line.id }, by, now);
  const { title, handover, bookMinutes } = line;
  return (
    <li className="hf-start-line">
      <h3>{title}</h3>
      {handover !== null && <p className="hf-handover">{handover}</p>}
      {refusals.length === 0 ? (
        <Button
          size="act"
          look="ink"
          command="startWork"
          isPending={sending.pending}
          label={t('bay.start.named', { title })}
          {...(bookMinutes === null
            ? {}
            : { follows: t('bay.start.book', { duration: format.duration(bookMinutes) }) })}
          onPress={() => {
            onStart(line, false);
          }}
        >
          {t('bay.start.act')}
        </Button>
      ) : (
        <>
          <ul className="hf-spot-why">
            {refusals.map((refusal) => (
              <li key={refusal.code}>{sentences.refusal(refusal)}</li>
            ))}
          </ul>
          <Button
            command="startWork"
            isPending={sending.pending}
            label={t('bay.start.alreadyNamed', { title })}
            onPress={() => {
              onStart(line, true);
            }}
          >
            {t('bay.start.already')}
          </Button>
        </>
      )}
    </li>
  );
};

/** The open lines: one tap starts; where it may not start, why, and a way to say that it was started all the same. */
export const StartSheet = ({ board, visit, now, onClose }: StartProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const lines = visit.lines.filter((line) => !lineEnded(line));
  const start = async (line: Row<'workLine'>, already: boolean): Promise<void> => {
    const input = { clockId: newId(), lineId: line.id, ...(already ? { alreadyStarted: true } : {}) };
    if (await sending.run('startWork', input, { text: 'bay.start.done', values: { title: line.title } })) onClose();
  };
  return (
    <Sheet isOpen onClose={onClose} heading={t('bay.start.heading')}>
      <Refusal problem={sending.problem} jobId={visit.job.id} />
      {lines.length === 0 ? (
        <p>{t('bay.start.none')}</p>
      ) : (
        <ul className="hf-start-lines">
          {lines.map((line) => (
            <StartLine
              key={line.id}
              board={board}
              line={line}
              now={now}
              sending={sending}
              onStart={(chosen, already) => void start(chosen, already)}
            />
          ))}
        </ul>
      )}
    </Sheet>
  );
};
