import type { JobView } from '@holdfast/contract';
import { lineEnded } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { newId } from '../live/send.js';
import { useMay, useSignedIn } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { StopForm } from '../pieces/clock-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { GoAheadForm } from '../pieces/go-ahead-form.js';
import { CarryOverForm, DropForm, FinishForm } from '../pieces/line-end-forms.js';
import { LineForm } from '../pieces/line-form.js';
import { Dated, Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { askedOf, concernNames, findingNames, type JobLine, openFollowUps, openLines } from './job-parties.js';

type LineProps = { readonly view: JobView; readonly line: JobLine };
const nothing = 'empty';

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

const LineActs = ({ view, line }: LineProps): ReactElement | null => {
  const { t } = useText();
  if (view.job.endedAt !== null || lineEnded(line)) return null;
  const jobId = view.job.id;
  const started = line.startedAt !== null;
  const asked = askedOf(view)?.name ?? null;
  const waits = line.goAhead === 'withCustomer';
  const answer = (
    <Opener command="recordGoAhead" label={t('job.goAhead')} look={waits ? 'frame' : 'plain'} about={line.title}>
      {(close) => <GoAheadForm line={line} jobId={jobId} asked={asked} onClose={close} />}
    </Opener>
  );
  return (
    <>
      {waits && answer}
      <ClockActs view={view} line={line} />
      <Opener command="finishLine" label={t('job.finish')} about={line.title}>
        {(close) => <FinishForm line={line} jobId={jobId} onClose={close} />}
      </Opener>
      {started && (
        <Opener command="carryOverLine" label={t('job.carryOver')} about={line.title}>
          {(close) => <CarryOverForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {!waits && answer}
      <Opener command="dropLine" label={t('job.drop')} look="plain" about={line.title}>
        {(close) => <DropForm line={line} jobId={jobId} onClose={close} />}
      </Opener>
    </>
  );
};

/** What is said of a line in one row: progress, hours, price, who pays, what it needs. */
const useLineFacts = (): ((view: JobView, line: JobLine, now: number) => string) => {
  const { t, format } = useText();
  return (view, line, now) => {
    const worked = view.clocks
      .filter((clock) => clock.lineId === line.id)
      .reduce((sum, { fromAt, toAt }) => sum + (toAt === null ? now : Date.parse(toAt)) - Date.parse(fromAt), 0);
    const after = view.lines.find((one) => one.id === line.afterLineId);
    return [
      t(`word.progress.${line.progress}`),
      ...(line.bookMinutes === null ? [] : [t('job.book', { time: format.duration(line.bookMinutes) })]),
      ...(worked > 0 ? [t('job.worked', { time: format.duration(worked / 60_000) })] : []),
      ...(line.price === null ? [] : [t('job.price', { price: format.money(line.price) })]),
      ...(line.payer === 'customer' ? [] : [t('job.payer', { payer: t(`word.payer.${line.payer}`) })]),
      ...(line.skill === null ? [] : [t('job.needsSkill', { skill: t(`word.skill.${line.skill as 'airbags'}`) })]),
      ...(line.equipment === null ? [] : [t(`word.equipment.${line.equipment as 'pit'}`)]),
      ...(after === undefined ? [] : [t('job.after', { title: after.title })]),
    ].join(' · ');
  };
};

const LineEntry = ({ view, line }: LineProps): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(30_000);
  const facts = useLineFacts();
  const running = view.clocks.filter((clock) => clock.lineId === line.id && clock.toAt === null);
  const words = line.goAheads.map((one) => ({
    when: format.moment(Date.parse(one.effectiveAt), now),
    what: t('job.word', {
      answer: one.answer,
      by: one.byName ?? nothing,
      how: one.how === null ? nothing : t(`word.way.${one.how}`),
      upTo: one.upTo === null ? nothing : format.money(one.upTo),
      words: one.words ?? nothing,
    }),
  }));
  const lines = [
    ...running.map(({ personId, fromAt }) =>
      t('job.onIt', { name: people.get(personId)?.name ?? '', since: format.moment(Date.parse(fromAt), now) }),
    ),
    ...(line.handover === null ? [] : [t('job.handover', { words: line.handover })]),
    ...(line.endWords === null
      ? []
      : [t('job.endWords', { progress: t(`word.progress.${line.progress}`), words: line.endWords })]),
  ];
  return (
    <Entry id={`workLine-${line.id}`} acts={<LineActs view={view} line={line} />}>
      <p className="hf-entry-title">{line.title}</p>
      <p className="hf-small">{facts(view, line, now)}</p>
      {words.length === 0 ? (
        <p className="hf-small hf-quiet">{t(`word.goAhead.${line.goAhead}`)}</p>
      ) : (
        <Dated lines={words} />
      )}
      {running.map((clock) => (
        <span key={clock.id} id={`clock-${clock.id}`} />
      ))}
      <SmallList lines={lines} />
    </Entry>
  );
};

/** The lines with their go-aheads as dated sentences. */
export const JobLines = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  return (
    <Part
      heading={t('job.lines')}
      acts={
        view.job.endedAt === null && (
          <Opener command="addLine" label={t('job.addLine')}>
            {(close) => (
              <LineForm
                jobId={view.job.id}
                lines={openLines(view)}
                concerns={concernNames(view)}
                findings={findingNames(view)}
                followUps={openFollowUps(view)}
                onClose={close}
              />
            )}
          </Opener>
        )
      }
    >
      {view.lines.length === 0 && <p className="hf-quiet">{t('job.noLines')}</p>}
      <Entries>
        {view.lines.map((line) => (
          <LineEntry key={line.id} view={view} line={line} />
        ))}
      </Entries>
    </Part>
  );
};
