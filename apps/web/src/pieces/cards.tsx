import type { Board } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import type { Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import './cards.css';
import { Refusal } from '../live/refusal.js';
import { useRead } from '../live/reads.js';
import { useMay, useSignedIn } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { useText, type Text } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { SentMark } from '../ui/marks/sent-mark.js';
import { said } from './typed.js';

const lineOf = (board: Board, report: Row<'report'>): string => {
  const { lineId } = report.said;
  return typeof lineId === 'string' ? (board.tables.workLine.get(lineId)?.title ?? '') : '';
};

const firmOf = (board: Board, report: Row<'report'>): string => {
  const { subletId } = report.said;
  return typeof subletId === 'string' ? (board.tables.sublet.get(subletId)?.firm ?? '') : '';
};

const reportWords = (board: Board, report: Row<'report'>, now: number, { t, format }: Text): string => {
  const values = {
    plate: board.tables.vehicle.get(report.vehicleId)?.plate ?? '',
    bay: board.tables.bay.get(report.bayId ?? '')?.name ?? '',
    line: lineOf(board, report),
    person: board.tables.person.get(report.personId ?? '')?.name ?? '',
    firm: firmOf(board, report),
    at: format.moment(report.effectiveAt, now),
  };
  return t(`card.said.${report.kind}`, values);
};

/** What stands in the record against a report, one sentence each. */
const standingWords = (board: Board, report: Row<'report'>, now: number, { t, format }: Text): string[] => {
  const { tables } = board;
  const since = (at: number): string => format.moment(at, now);
  const sentences = report.against.map((id) => {
    const use = tables.spotUse.get(id);
    if (use) {
      const [plate, bay] = [tables.vehicle.get(use.vehicleId)?.plate, tables.bay.get(use.bayId)?.name];
      return t('card.stands.spotUse', { plate: plate ?? '', bay: bay ?? '', since: since(use.fromAt) });
    }
    const clock = tables.clock.get(id);
    if (clock) {
      const [person, line] = [tables.person.get(clock.personId)?.name, tables.workLine.get(clock.lineId)?.title];
      return t('card.stands.clock', { person: person ?? '', line: line ?? '', since: since(clock.fromAt) });
    }
    const place = tables.place.get(id);
    if (place) {
      const plate = tables.vehicle.get(place.vehicleId)?.plate ?? '';
      return t('card.stands.place', { plate, kind: place.kind, since: since(place.fromAt) });
    }
    const line = tables.workLine.get(id);
    return line ? t('card.stands.line', { line: line.title, progress: t(`word.progress.${line.progress}`) }) : null;
  });
  const known = sentences.filter((sentence) => sentence !== null);
  return known.length > 0 ? known : [t('card.stands.ended')];
};

/** One report that clashes with the record: what was said and when, what stands, and the two ways to settle it. */
const Card = ({ report }: { readonly report: Row<'report'> }): ReactElement | null => {
  const text = useText();
  const { t } = text;
  const board = useBoard();
  const now = useNow();
  const { person } = useSignedIn();
  const job = useRead<JobView>(`/api/jobs/${report.jobId}`, [`job:${report.jobId}`]);
  const sending = useSend();
  const [words, setWords] = useState('');
  const byId = job.data?.reports.find((one) => one.id === report.id)?.byId ?? null;
  const by = board.tables.person.get(byId ?? '')?.name;
  const isLead = person.roles.some((role) => role === 'owner' || role === 'manager');
  if (!isLead && byId !== person.id && report.personId !== person.id) return null;
  const settle = (take: boolean): void => {
    const input = { reportId: report.id, version: report.version, take };
    const usual = t(take ? 'card.takenWords' : 'card.leftWords');
    void sending.run(
      'settleCard',
      { ...input, words: said(words) ?? usual },
      { text: take ? 'card.taken' : 'card.left' },
    );
  };
  return (
    <li className="hf-card" data-job={board.tables.job.get(report.jobId)?.number}>
      <SentMark state="needsYou" title={null} size={28} />
      <div className="hf-stack">
        <div>
          <p>
            {by === undefined ? t('card.somebody') : t('card.by', { person: by })}{' '}
            <strong>{reportWords(board, report, now, text)}</strong>
          </p>
          {standingWords(board, report, now, text).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
        <div className="hf-card-acts">
          <Field label={t('card.words')} value={words} onChange={setWords} />
          <div className="hf-row">
            {([true, false] as const).map((take) => (
              <Button
                key={String(take)}
                command="settleCard"
                isPending={sending.pending}
                follows={t(take ? 'card.takeFollows' : 'card.leaveFollows')}
                onPress={() => {
                  settle(take);
                }}
              >
                {t(take ? 'card.take' : 'card.leave')}
              </Button>
            ))}
          </div>
        </div>
        <Refusal problem={sending.problem} jobId={report.jobId} />
      </div>
    </li>
  );
};

/** All reports that wait to be settled by the person who is signed in; nothing while there is none. */
export const Cards = (): ReactElement | null => {
  const { t } = useText();
  const board = useBoard();
  const may = useMay();
  const open = [...board.tables.report.values()]
    .filter((report) => report.state === 'contested')
    .sort((a, b) => a.effectiveAt - b.effectiveAt);
  if (open.length === 0 || !may.command('settleCard')) return null;
  return (
    <section className="hf-cards" aria-label={t('card.heading')}>
      <h2>{t('card.heading')}</h2>
      <ul>
        {open.map((report) => (
          <Card key={report.id} report={report} />
        ))}
      </ul>
    </section>
  );
};
