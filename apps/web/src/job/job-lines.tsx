import type { JobView } from '@holdfast/contract';
import { lineEnded } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { LineForm } from '../pieces/line-form.js';
import { Dated, Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import {
  causeNames,
  concernNames,
  findingNames,
  type JobLine,
  openFollowUps,
  openLines,
  sectionId,
} from './job-parties.js';
import { JobStandings } from './job-standings.js';
import { LineActs, type LineProps } from './line-acts.js';
import { MakeChoiceForm } from './line-forms.js';
import { lineGroups, type LineGroup, type LineItem } from './line-groups.js';

type Props = { readonly view: JobView };
const nothing = 'empty';

/** What is said of a line in one row: progress, hours, price, who pays, what it needs. */
const useLineFacts = (): ((view: JobView, line: JobLine, now: number) => string) => {
  const { t, format } = useText();
  return (view, line, now) => {
    const worked = view.clocks
      .filter((clock) => clock.lineId === line.id)
      .reduce((sum, { fromAt, toAt }) => sum + (toAt === null ? now : Date.parse(toAt)) - Date.parse(fromAt), 0);
    const after = view.lines.find((one) => one.id === line.afterLineId);
    const charged = line.withdrawnAt !== null && line.progress === 'dropped' && line.price !== null;
    return [
      t(`word.progress.${line.progress}`),
      ...(line.bookMinutes === null ? [] : [t('job.book', { time: format.duration(line.bookMinutes) })]),
      ...(worked > 0 ? [t('job.worked', { time: format.duration(worked / 60_000) })] : []),
      ...(line.price === null ? [] : [t(charged ? 'line.charged' : 'job.price', { price: format.money(line.price) })]),
      ...(line.payer === 'customer' ? [] : [t('job.payer', { payer: t(`word.payer.${line.payer}`) })]),
      ...(line.skill === null ? [] : [t('job.needsSkill', { skill: t(`word.skill.${line.skill as 'airbags'}`) })]),
      ...(line.equipment === null ? [] : [t(`word.equipment.${line.equipment as 'pit'}`)]),
      ...(after === undefined ? [] : [t('job.after', { title: after.title })]),
    ].join(' · ');
  };
};

/** Each answer of the customer as a dated sentence. */
const useAnswers = (): ((line: JobLine, now: number) => { when: string; what: string }[]) => {
  const { t, format } = useText();
  return (line, now) =>
    line.goAheads.map((one) => ({
      when: format.moment(Date.parse(one.effectiveAt), now),
      what: t('job.word', {
        answer: one.answer,
        by: one.byName ?? nothing,
        how: one.how === null ? nothing : t(`word.way.${one.how}`),
        upTo: one.upTo === null ? nothing : format.money(one.upTo),
        words: one.words ?? nothing,
      }),
    }));
};

const LineEntry = ({ view, line }: LineProps): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(30_000);
  const facts = useLineFacts();
  const words = useAnswers()(line, now);
  const running = view.clocks.filter((clock) => clock.lineId === line.id && clock.toAt === null);
  const rests = view.standing.find((one) => one.id === line.standingId);
  const lines = [
    ...(rests === undefined ? [] : [t('line.rests', { kind: t(`word.standing.${rests.kind}`) })]),
    ...running.map(({ personId, fromAt }) =>
      t('job.onIt', { name: people.get(personId)?.name ?? '', since: format.moment(Date.parse(fromAt), now) }),
    ),
    ...(line.handover === null ? [] : [t('job.handover', { words: line.handover })]),
    ...(line.endWords === null
      ? []
      : [t('job.endWords', { progress: t(`word.progress.${line.progress}`), words: line.endWords })]),
  ];
  const putBack = line.withdrawnAt !== null && line.startedAt !== null && !lineEnded(line);
  return (
    <Entry id={`workLine-${line.id}`} acts={<LineActs view={view} line={line} />}>
      <p className="hf-entry-title">{line.title}</p>
      <p className="hf-small">{facts(view, line, now)}</p>
      {words.length === 0 ? (
        <p className="hf-small hf-quiet">{t(`word.goAhead.${line.goAhead}`)}</p>
      ) : (
        <Dated lines={words} />
      )}
      {putBack && <p className="hf-entry-title">{t('line.putBackNow')}</p>}
      {running.map((clock) => (
        <span key={clock.id} id={`clock-${clock.id}`} />
      ))}
      <SmallList lines={lines} />
    </Entry>
  );
};

/** Ways to the same end, drawn as one bracket: at most one of them is given. */
const ChoiceEntry = ({ view, lines }: Props & { readonly lines: readonly JobLine[] }): ReactElement => {
  const { t } = useText();
  const given = lines.find((line) => line.goAhead === 'given');
  const words = given === undefined ? t('line.oneOf') : t('line.oneOfGiven', { title: given.title });
  return (
    <li className="hf-line-choice">
      <p className="hf-line-choice-head">{words}</p>
      <ul className="hf-entries" aria-label={words}>
        {lines.map((line) => (
          <LineEntry key={line.id} view={view} line={line} />
        ))}
      </ul>
    </li>
  );
};

const Item = ({ view, item }: Props & { readonly item: LineItem }): ReactElement =>
  item.kind === 'line' ? <LineEntry view={view} line={item.line} /> : <ChoiceEntry view={view} lines={item.lines} />;

const Group = ({ view, group, isOnly }: Props & { group: LineGroup; isOnly: boolean }): ReactElement => {
  const { t } = useText();
  const { cause, concerns, items } = group;
  const [first] = concerns;
  const heading =
    cause === null
      ? (first?.words ?? t('line.otherWork'))
      : t('line.causeIs', { words: cause.words, certainty: t(`word.certainty.${cause.certainty}`) });
  return (
    <div className="hf-line-group">
      {!(isOnly && cause === null && first === undefined) && (
        <div>
          <h3>{heading}</h3>
          {cause !== null && concerns.length > 0 && (
            <p className="hf-small hf-quiet">
              {t('line.for', { concerns: concerns.map((concern) => concern.words).join('; ') })}
            </p>
          )}
        </div>
      )}
      <Entries>
        {items.map((item) => (
          <Item key={item.kind === 'line' ? item.line.id : item.id} view={view} item={item} />
        ))}
      </Entries>
    </div>
  );
};

/** Lines that could still become ways to the same end: open, and in no choice yet. */
const choosable = (view: JobView): JobLine[] => view.lines.filter((line) => !lineEnded(line) && line.choiceId === null);

/** The lines under what they are for, with their go-aheads as dated sentences. */
export const JobLines = ({ view }: Props): ReactElement => {
  const { t } = useText();
  const groups = lineGroups(view);
  const isOpen = view.job.endedAt === null;
  const free = choosable(view);
  return (
    <Part
      id={sectionId('lines')}
      heading={t('job.lines')}
      acts={
        isOpen && (
          <>
            <Opener command="addLine" label={t('job.addLine')}>
              {(close) => (
                <LineForm
                  jobId={view.job.id}
                  lines={openLines(view)}
                  concerns={concernNames(view)}
                  causes={causeNames(view)}
                  findings={findingNames(view)}
                  followUps={openFollowUps(view)}
                  onClose={close}
                />
              )}
            </Opener>
            {free.length > 1 && (
              <Opener command="makeChoice" label={t('line.makeChoice')}>
                {(close) => <MakeChoiceForm view={view} lines={free} onClose={close} />}
              </Opener>
            )}
          </>
        )
      }
    >
      {view.lines.length === 0 && <p className="hf-quiet">{t('job.noLines')}</p>}
      {groups.map((group) => (
        <Group key={group.key} view={view} group={group} isOnly={groups.length === 1} />
      ))}
      <JobStandings view={view} />
    </Part>
  );
};
