import { type Board, type Forgotten, forgottenClocks, forgottenPresence } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import './cards.css';
import { Refusal } from '../live/refusal.js';
import { useMay, useSignedIn } from '../live/session.js';
import { useSend, type Sending } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet, Opener } from './form-sheet.js';
import { isoOf, said } from './typed.js';

/** One stretch that runs on from an earlier day, whichever it is, in words and with the way to end it. */
type Asked = {
  readonly row: Row<'clock'> | Row<'attendance'>;
  readonly proposedEnd: number | null;
  readonly command: 'correctClock' | 'correctAttendance';
  /** What runs since when, as a sentence. */
  readonly question: string;
  /** The same, short. */
  readonly about: string;
  readonly usualWords: string;
  readonly jobId?: string;
  readonly end: (sending: Sending, at: number, words: string) => Promise<boolean>;
};

/** What is asked about a forgotten clock, and about somebody who never said that they had gone. */
const useAsked = (board: Board, now: number) => {
  const { t, format } = useText();
  const { person } = useSignedIn();
  const nameOf = (id: string): string => (id === person.id ? 'own' : (board.tables.person.get(id)?.name ?? ''));
  const written = (at: number): string => format.moment(at, now);
  const clock = ({ row, proposedEnd }: Forgotten<'clock'>): Asked => {
    const plate = board.tables.vehicle.get(board.tables.job.get(row.jobId)?.vehicleId ?? '')?.plate ?? '';
    const line = board.tables.workLine.get(row.lineId)?.title ?? '';
    const values = { plate, line, since: written(row.fromAt) };
    return {
      ...{ row, proposedEnd, command: 'correctClock', jobId: row.jobId, usualWords: t('forgotten.usualWords') },
      question: t('forgotten.runs', { name: nameOf(row.personId), ...values }),
      about: t('forgotten.on', values),
      end: async (sending, at, words) => {
        const input = { clockId: row.id, version: row.version, toAt: isoOf(at), words };
        const done = { text: 'forgotten.done', values: { line, at: written(at) } } as const;
        return (await sending.run('correctClock', input, done)) !== null;
      },
    };
  };
  const presence = ({ row, proposedEnd }: Forgotten<'attendance'>): Asked => {
    const name = board.tables.person.get(row.personId)?.name ?? '';
    const since = written(row.fromAt);
    return {
      ...{ row, proposedEnd, command: 'correctAttendance', usualWords: t('forgotten.presenceWords') },
      question: t('forgotten.presence', { name: nameOf(row.personId), since }),
      about: t('forgotten.presenceOn', { name, since }),
      end: async (sending, at, words) => {
        const input = { attendanceId: row.id, version: row.version, toAt: isoOf(at), words };
        const done = { text: 'forgotten.presenceDone', values: { name, at: written(at) } } as const;
        return (await sending.run('correctAttendance', input, done)) !== null;
      },
    };
  };
  return (): Asked[] => [...forgottenClocks(board, now).map(clock), ...forgottenPresence(board, now).map(presence)];
};

type OneProps = { readonly one: Asked; readonly now: number };

/** It ended at another time than the one proposed, or there is none to propose. */
const EndAtForm = ({ one, now, onClose }: OneProps & { readonly onClose: () => void }): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [at, setAt] = useState<number | null>(one.proposedEnd);
  const [words, setWords] = useState(one.usualWords);
  const isRight = at !== null && at > one.row.fromAt && at <= now;
  const send = async (): Promise<void> => {
    if (at !== null && (await one.end(sending, at, words.trim()))) onClose();
  };
  return (
    <FormSheet
      heading={t('forgotten.anotherHeading')}
      command={one.command}
      act={t('forgotten.endAct')}
      sending={sending}
      ready={isRight && said(words) !== undefined}
      {...(one.jobId === undefined ? {} : { jobId: one.jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{one.about}</p>
      <DateTimeField
        label={t('forgotten.end')}
        value={at}
        onChange={setAt}
        wrong={at === null || isRight ? null : t('forgotten.endWrong')}
        isRequired
      />
      <TextArea label={t('forgotten.words')} value={words} onChange={setWords} rows={2} isRequired />
    </FormSheet>
  );
};

const ForgottenCard = ({ one, now }: OneProps): ReactElement => {
  const { t, format } = useText();
  const may = useMay();
  const sending = useSend();
  const { proposedEnd } = one;
  return (
    <li className="hf-forgotten">
      <p>{one.question}</p>
      <div className="hf-row">
        {proposedEnd !== null && may.command(one.command) && (
          <Button
            size="small"
            command={one.command}
            label={t('forgotten.actAbout', { at: format.moment(proposedEnd, now), about: one.about })}
            isPending={sending.pending}
            onPress={() => void one.end(sending, proposedEnd, one.usualWords)}
          >
            {t('forgotten.act', { at: format.moment(proposedEnd, now) })}
          </Button>
        )}
        <Opener look="plain" label={t('forgotten.another')} about={one.about} command={one.command}>
          {(close) => <EndAtForm one={one} now={now} onClose={close} />}
        </Opener>
      </div>
      <Refusal problem={sending.problem} {...(one.jobId === undefined ? {} : { jobId: one.jobId })} />
    </li>
  );
};

type ForgottenProps = {
  readonly board: Board;
  readonly now: number;
  /** Owner and manager are asked about those of others too. */
  readonly ofOthers: boolean;
};

/** Clocks and presence that run on from an earlier day: asked about with an end to propose, never ended by themselves. */
export const ForgottenClocks = ({ board, now, ofOthers }: ForgottenProps): ReactElement | null => {
  const { t } = useText();
  const { person } = useSignedIn();
  const leads = person.roles.includes('owner') || person.roles.includes('manager');
  const all = useAsked(board, now)();
  const asked = all.filter(({ row }) => row.personId === person.id || (ofOthers && leads));
  if (asked.length === 0) return null;
  const heading = t('forgotten.heading', { count: asked.length });
  return (
    <section className="hf-cards" aria-label={heading}>
      <h2>{heading}</h2>
      <p className="hf-quiet hf-small">{t('forgotten.why')}</p>
      <ul className="hf-forgotten-list">
        {asked.map((one) => (
          <ForgottenCard key={one.row.id} one={one} now={now} />
        ))}
      </ul>
    </section>
  );
};
