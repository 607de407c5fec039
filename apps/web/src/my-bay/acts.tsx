import { lineEnded } from '@holdfast/domain';
import type { ReactElement, ReactNode } from 'react';

import { StopForm } from '../pieces/clock-forms.js';
import { HoldForm } from '../pieces/hold-form.js';
import { FinishForm } from '../pieces/line-end-forms.js';
import { LineForm } from '../pieces/line-form.js';
import { WantPartForm } from '../pieces/part-forms.js';
import { AskForm } from '../pieces/question-forms.js';
import { awaitedParts } from '../pieces/visit-lists.js';
import { useText } from '../text/use-text.js';
import { ActButton, namedOf, type ActsProps } from './act-button.js';
import { FixActs, MoveActs, SeenActs } from './more-acts.js';
import { StartSheet } from './start-sheet.js';

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

/** What goes on with the work: hold it, want a part, add a line, ask somebody. */
const WorkActs = (props: ActsProps): ReactElement => {
  const { board, visit } = props;
  const { concerns, lines, followUps } = namedOf(props);
  const { id: jobId } = visit.job;
  return (
    <>
      <ActButton act="hold" text="bay.act.hold" command="openHold">
        {(close) => <HoldForm jobId={jobId} lines={lines} parts={awaitedParts(board, visit)} onClose={close} />}
      </ActButton>
      <ActButton act="part" text="bay.act.part" command="wantPart">
        {(close) => <WantPartForm lines={lines} followUps={followUps} jobId={jobId} onClose={close} />}
      </ActButton>
      <ActButton act="line" text="bay.act.line" command="addLine">
        {(close) => <LineForm jobId={jobId} lines={lines} concerns={concerns} followUps={followUps} onClose={close} />}
      </ActButton>
      <ActButton act="ask" text="bay.act.ask" command="askQuestion">
        {(close) => <AskForm jobId={jobId} lines={lines} onClose={close} />}
      </ActButton>
    </>
  );
};

const Group = ({ heading, children }: { readonly heading: string; readonly children: ReactNode }): ReactElement => (
  <section className="hf-bay-acts" aria-label={heading}>
    <h2>{heading}</h2>
    <div className="hf-acts">{children}</div>
  </section>
);

/** What can be said or done at the bay about this vehicle, each one large button, by what it is about. */
export const Acts = (props: ActsProps): ReactElement => {
  const { t } = useText();
  return (
    <>
      <Group heading={t('bay.acts.work')}>
        <ClockActs {...props} />
        <WorkActs {...props} />
      </Group>
      <Group heading={t('bay.acts.seen')}>
        <SeenActs {...props} />
      </Group>
      <Group heading={t('bay.acts.minded')}>
        <FixActs {...props} />
      </Group>
      <Group heading={t('bay.acts.moved')}>
        <MoveActs {...props} />
      </Group>
    </>
  );
};
