import { calendarOfBoard } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import { lineEnded } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { newId } from '../live/send.js';
import { useMay, useSignedIn } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { StopForm } from '../pieces/clock-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { GoAheadForm } from '../pieces/go-ahead-form.js';
import { CarryOverForm, DropForm, FinishForm } from '../pieces/line-end-forms.js';
import { WithdrawForm } from '../pieces/withdraw-form.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { askedOf, type JobLine, standingOf } from './job-parties.js';
import { ChangeLineForm, ReopenForm } from './line-forms.js';

export type LineProps = { readonly view: JobView; readonly line: JobLine };

/** My own clock on this line: one press starts it; stopping asks what is loose, open or next. */
const ClockActs = ({ view, line }: LineProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const sending = useSend();
  const { person } = useSignedIn();
  const mine = view.clocks.find(
    (clock) => clock.lineId === line.id && clock.personId === person.id && clock.toAt === null,
  );
  if (mine) {
    return (
      <Opener command="stopWork" label={t('job.stop')} about={line.title}>
        {(close) => <StopForm clock={mine} title={line.title} jobId={view.job.id} onClose={close} />}
      </Opener>
    );
  }
  if (!may.command('startWork')) return null;
  const start = (): void => {
    const done = { text: 'piece.done.start', values: { title: line.title } } as const;
    void sending.run('startWork', { clockId: newId(), lineId: line.id }, done);
  };
  return (
    <>
      <Button
        size="small"
        command="startWork"
        label={`${t('job.start')}: ${line.title}`}
        isPending={sending.pending}
        onPress={start}
      >
        {t('job.start')}
      </Button>
      <Refusal problem={sending.problem} jobId={view.job.id} />
    </>
  );
};

/** The line is no longer one of several ways. */
const LeaveChoice = ({ view, line }: LineProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const sending = useSend();
  if (line.choiceId === null || !may.command('changeLine')) return null;
  const leave = (): void => {
    const done = { text: 'line.done.leaveChoice', values: { title: line.title } } as const;
    void sending.run('changeLine', { lineId: line.id, version: line.version, choiceId: null }, done);
  };
  return (
    <>
      <Button
        size="small"
        look="plain"
        command="changeLine"
        label={`${t('line.leaveChoice')}: ${line.title}`}
        isPending={sending.pending}
        onPress={leave}
      >
        {t('line.leaveChoice')}
      </Button>
      <Refusal problem={sending.problem} jobId={view.job.id} />
    </>
  );
};

const Answer = ({ view, line, onClose }: LineProps & { readonly onClose: () => void }): ReactElement => {
  const today = calendarOfBoard(useBoard()).dateOf(useNow(60_000));
  return (
    <GoAheadForm
      line={line}
      jobId={view.job.id}
      asked={askedOf(view)?.name ?? null}
      standing={standingOf(view, today)}
      onClose={onClose}
    />
  );
};

/** What is done to a line more seldom: said anew, its word taken back, carried over, dropped. */
const SeldomActs = ({ view, line }: LineProps): ReactElement => {
  const { t } = useText();
  const jobId = view.job.id;
  const asked = askedOf(view)?.name ?? null;
  return (
    <>
      <Opener command="changeLine" label={t('line.change')} look="plain" about={line.title}>
        {(close) => <ChangeLineForm view={view} line={line} onClose={close} />}
      </Opener>
      {line.goAhead !== 'withCustomer' && (
        <Opener command="recordGoAhead" label={t('job.goAhead')} look="plain" about={line.title}>
          {(close) => <Answer view={view} line={line} onClose={close} />}
        </Opener>
      )}
      {line.goAhead === 'given' && (
        <Opener command="withdrawGoAhead" label={t('line.withdraw')} look="plain" about={line.title}>
          {(close) => <WithdrawForm line={line} jobId={jobId} asked={asked} onClose={close} />}
        </Opener>
      )}
      {line.startedAt !== null && (
        <Opener command="carryOverLine" label={t('job.carryOver')} look="plain" about={line.title}>
          {(close) => <CarryOverForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      <LeaveChoice view={view} line={line} />
      <Opener command="dropLine" label={t('job.drop')} look="plain" about={line.title}>
        {(close) => <DropForm line={line} jobId={jobId} onClose={close} />}
      </Opener>
    </>
  );
};

const More = ({ view, line }: LineProps): ReactElement => {
  const { t } = useText();
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button
        size="small"
        look="plain"
        pressed={isOpen}
        label={`${t('line.more')}: ${line.title}`}
        onPress={() => {
          setOpen(!isOpen);
        }}
      >
        {t('line.more')}
      </Button>
      {isOpen && (
        <div className="hf-line-seldom">
          <SeldomActs view={view} line={line} />
        </div>
      )}
    </>
  );
};

/** What can be done to a line: what is asked now in sight, the rest behind one press. */
export const LineActs = ({ view, line }: LineProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  if (view.job.endedAt !== null) return null;
  const jobId = view.job.id;
  if (lineEnded(line)) {
    return (
      <Opener command="reopenLine" label={t('line.reopen')} look="plain" about={line.title}>
        {(close) => <ReopenForm view={view} line={line} onClose={close} />}
      </Opener>
    );
  }
  const putBack = line.withdrawnAt !== null && line.startedAt !== null;
  const hasMore = may.command('changeLine') || may.command('recordGoAhead') || may.command('withdrawGoAhead');
  return (
    <>
      {line.goAhead === 'withCustomer' && (
        <Opener command="recordGoAhead" label={t('job.goAhead')} about={line.title}>
          {(close) => <Answer view={view} line={line} onClose={close} />}
        </Opener>
      )}
      <ClockActs view={view} line={line} />
      {putBack ? (
        <Opener command="dropLine" label={t('line.putBack')} about={line.title}>
          {(close) => <DropForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      ) : (
        <Opener command="finishLine" label={t('job.finish')} about={line.title}>
          {(close) => <FinishForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {hasMore && <More view={view} line={line} />}
    </>
  );
};
