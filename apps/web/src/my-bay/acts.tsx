import { rowsOf, type Board, type Visit } from '@holdfast/board';
import { lineEnded, type CommandName, type Row } from '@holdfast/domain';
import type { TextKey } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { CautionForm } from '../pieces/caution-forms.js';
import { StopForm } from '../pieces/clock-forms.js';
import { FindingForm } from '../pieces/finding-form.js';
import { FixForm } from '../pieces/fix-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { HoldForm } from '../pieces/hold-form.js';
import { FinishForm } from '../pieces/line-end-forms.js';
import { LineForm, type Named } from '../pieces/line-form.js';
import { WantPartForm } from '../pieces/part-forms.js';
import { PhotoForm } from '../pieces/photo-form.js';
import { RollsForm } from '../pieces/rolls-form.js';
import { awaitedParts, openLines } from '../pieces/visit-lists.js';
import { useText } from '../text/use-text.js';
import { ActGlyph, type Act } from './act-glyph.js';
import { IntoBaySheet, ToYardSheet } from './move-sheets.js';
import { StartSheet } from './start-sheet.js';

export type ActsProps = {
  readonly board: Board;
  readonly visit: Visit;
  readonly now: number;
  /** The clock the person is on, where it runs on this vehicle. */
  readonly clock: Row<'clock'> | undefined;
  /** The person is on some clock. */
  readonly isClocked: boolean;
  readonly homeBayId: string | undefined;
};

type ActButtonProps = {
  readonly act: Act;
  readonly text: TextKey;
  readonly command: CommandName;
  readonly look?: 'ink';
  readonly children: (close: () => void) => ReactElement;
};

const ActButton = ({ act, text, command, look, children }: ActButtonProps): ReactElement => {
  const { t } = useText();
  return (
    <Opener
      size="act"
      label={t(text)}
      command={command}
      mark={<ActGlyph act={act} />}
      {...(look === undefined ? {} : { look })}
    >
      {children}
    </Opener>
  );
};

const useNamed = ({ board, visit }: ActsProps) => {
  const { t } = useText();
  const concerns: Named[] = rowsOf(board)
    .list('concern', (concern) => concern.jobId === visit.job.id)
    .map(({ id, words }) => ({ id, title: words }));
  const lines = openLines(visit);
  const followUps = visit.followUps.map(({ id, title }) => ({ id, title }));
  return { t, concerns, lines, followUps };
};

/**
 * The acts of the clock: what a technician does many times a day stands first. Start and stop are one button, so that it
 * keeps the focus when the one turns into the other.
 */
const ClockActs = (props: ActsProps): ReactElement => {
  const { board, visit, now, clock } = props;
  const { id: jobId } = visit.job;
  const line = clock && visit.lines.find((one) => one.id === clock.lineId);
  const act = clock && line ? 'stop' : 'start';
  return (
    <>
      <ActButton
        act={act}
        text={`bay.act.${act}`}
        command={act === 'stop' ? 'stopWork' : 'startWork'}
        {...(act === 'stop' || !props.isClocked ? { look: 'ink' as const } : {})}
      >
        {(close) =>
          clock && line ? (
            <StopForm clock={clock} title={line.title} jobId={jobId} onClose={close} />
          ) : (
            <StartSheet board={board} visit={visit} now={now} onClose={close} />
          )
        }
      </ActButton>
      {line && !lineEnded(line) && (
        <ActButton act="done" text="bay.act.done" command="finishLine">
          {(close) => <FinishForm line={line} jobId={jobId} onClose={close} />}
        </ActButton>
      )}
    </>
  );
};

/** What can be said or done at the bay about this vehicle, each one large button. */
export const Acts = (props: ActsProps): ReactElement => {
  const { board, visit, now, homeBayId } = props;
  const { t, concerns, lines, followUps } = useNamed(props);
  const { id: jobId } = visit.job;
  const { vehicle } = visit;
  return (
    <section className="hf-acts" aria-label={t('bay.acts')}>
      <ClockActs {...props} />
      <ActButton act="hold" text="bay.act.hold" command="openHold">
        {(close) => <HoldForm jobId={jobId} lines={lines} parts={awaitedParts(board, visit)} onClose={close} />}
      </ActButton>
      <ActButton act="part" text="bay.act.part" command="wantPart">
        {(close) => <WantPartForm lines={lines} followUps={followUps} jobId={jobId} onClose={close} />}
      </ActButton>
      <ActButton act="finding" text="bay.act.finding" command="addFinding">
        {(close) => <FindingForm jobId={jobId} concerns={concerns} onClose={close} />}
      </ActButton>
      <ActButton act="photo" text="bay.act.photo" command="attachPhoto">
        {(close) => <PhotoForm jobId={jobId} onClose={close} />}
      </ActButton>
      <ActButton act="fix" text="bay.act.fix" command="addTemporaryFix">
        {(close) => <FixForm jobId={jobId} lines={lines} followUps={followUps} onClose={close} />}
      </ActButton>
      <ActButton act="caution" text="bay.act.caution" command="addCaution">
        {(close) => <CautionForm vehicleId={vehicle.id} jobId={jobId} onClose={close} />}
      </ActButton>
      <ActButton act="line" text="bay.act.line" command="addLine">
        {(close) => <LineForm jobId={jobId} lines={lines} concerns={concerns} followUps={followUps} onClose={close} />}
      </ActButton>
      <ActButton act="rolls" text="bay.act.rolls" command="recordRolls">
        {(close) => <RollsForm vehicle={vehicle} jobId={jobId} onClose={close} />}
      </ActButton>
      <ActButton act="bay" text="bay.act.intoBay" command="takeIntoBay">
        {(close) => <IntoBaySheet board={board} visit={visit} now={now} homeBayId={homeBayId} onClose={close} />}
      </ActButton>
      {visit.place?.kind === 'bay' && (
        <ActButton act="yard" text="bay.act.toYard" command="moveToYard">
          {(close) => <ToYardSheet visit={visit} onClose={close} />}
        </ActButton>
      )}
    </section>
  );
};
