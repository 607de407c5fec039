import { rowsOf, wouldRefuse, type Board, type Visit } from '@holdfast/board';
import { lineEnded, type Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { newId } from '../live/send.js';
import { useSend, type Sending } from '../live/use-send.js';
import { CautionForbids } from '../pieces/caution-forbids.js';
import { useBy } from '../pieces/placing.js';
import { useSentences } from '../pieces/sentences.js';
import { cautionWords } from '../pieces/vehicle-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Sheet } from '../ui/layers/dialog.js';
import { CautionMark } from '../ui/marks/caution-mark.js';

type StartProps = { readonly board: Board; readonly visit: Visit; readonly now: number; readonly onClose: () => void };

/** As intended, as a report of what was begun, or to make it safe where it stands. */
type How = 'intended' | 'already' | 'makesSafe';

type LineProps = {
  readonly board: Board;
  readonly line: Row<'workLine'>;
  readonly now: number;
  readonly sending: Sending;
  readonly onStart: (line: Row<'workLine'>, how: How) => void;
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
      {handover !== null && <p className="hf-quiet">{t('bay.start.hasHandover')}</p>}
      {line.withdrawnAt !== null && <p className="hf-entry-title">{t('bay.line.putBack')}</p>}
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
            onStart(line, 'intended');
          }}
        >
          {t('bay.start.act')}
        </Button>
      ) : (
        <>
          <ul className="hf-spot-why">
            {refusals.map((refusal) => (
              <li key={`${refusal.code} ${refusal.way?.id ?? ''}`}>{sentences.refusal(refusal)}</li>
            ))}
          </ul>
          <Button
            command="startWork"
            isPending={sending.pending}
            label={t('bay.start.alreadyNamed', { title })}
            onPress={() => {
              onStart(line, 'already');
            }}
          >
            {t('bay.start.already')}
          </Button>
          {refusals.every(({ code }) => code === 'work.noGoAhead') && (
            <Button
              command="startWork"
              isPending={sending.pending}
              label={t('bay.start.makesSafeNamed', { title })}
              follows={t('bay.start.makesSafeMeans')}
              onPress={() => {
                onStart(line, 'makesSafe');
              }}
            >
              {t('bay.start.makesSafe')}
            </Button>
          )}
        </>
      )}
    </li>
  );
};

type HandoverProps = {
  readonly board: Board;
  readonly line: Row<'workLine'>;
  readonly visit: Visit;
  readonly now: number;
};

/** What whoever stopped last left loose, open or next, with the cautions that stand: read whole before the clock starts. */
const Handover = ({ board, line, visit, now }: HandoverProps): ReactElement => {
  const { t, format } = useText();
  const [last] = rowsOf(board)
    .list('clock', (clock) => clock.lineId === line.id && clock.toAt !== null)
    .sort((a, b) => (b.toAt ?? 0) - (a.toAt ?? 0));
  const who = last && board.tables.person.get(last.personId)?.name;
  return (
    <>
      <h3>{t('bay.start.left', { title: line.title })}</h3>
      <p className="hf-handover hf-handover-full">{line.handover}</p>
      {last !== undefined && (
        <p className="hf-quiet">
          {t('bay.start.leftBy', { who: who ?? t('out.somebody'), at: format.moment(last.toAt ?? now, now) })}
        </p>
      )}
      {visit.cautions.length > 0 && (
        <ul className="hf-caution-list" aria-label={t('bay.cautions')}>
          {visit.cautions.map((caution) => (
            <li key={caution.id}>
              <CautionMark kind="caution" title={null} size={32} />
              <span className="hf-caution-text">
                {cautionWords(caution, t)}
                <CautionForbids code={caution.code} />
              </span>
            </li>
          ))}
        </ul>
      )}
    </>
  );
};

/**
 * The open lines: one tap starts. Where something was left on the line it is shown full first, and one more tap goes on.
 * Where it may not start, why, and a way to say that it was started all the same.
 */
export const StartSheet = ({ board, visit, now, onClose }: StartProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [reading, setReading] = useState<{ readonly lineId: string; readonly how: How } | null>(null);
  const lines = visit.lines.filter((line) => !lineEnded(line));
  const read = lines.find((line) => line.id === reading?.lineId);
  const start = async (line: Row<'workLine'>, how: How): Promise<void> => {
    const said = how === 'intended' ? {} : how === 'already' ? { alreadyStarted: true } : { makesSafe: true };
    const input = { clockId: newId(), lineId: line.id, ...said };
    if (await sending.run('startWork', input, { text: 'bay.start.done', values: { title: line.title } })) onClose();
  };
  if (read !== undefined) {
    return (
      <Sheet
        isOpen
        onClose={onClose}
        heading={t('bay.loose')}
        acts={
          <Button
            look="ink"
            command="startWork"
            isPending={sending.pending}
            label={t('bay.start.readNamed', { title: read.title })}
            onPress={() => void start(read, reading?.how ?? 'intended')}
          >
            {t('bay.start.read')}
          </Button>
        }
      >
        <Handover board={board} line={read} visit={visit} now={now} />
        <Refusal problem={sending.problem} jobId={visit.job.id} />
      </Sheet>
    );
  }
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
              onStart={(chosen, how) => {
                if (chosen.handover === null) void start(chosen, how);
                else setReading({ lineId: chosen.id, how });
              }}
            />
          ))}
        </ul>
      )}
    </Sheet>
  );
};
