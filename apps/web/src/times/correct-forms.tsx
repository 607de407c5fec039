import type { TimesView } from '@holdfast/contract';
import { attendanceKinds, holdReasons, type HoldReason } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { type Sending, useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { optionsOf } from '../pieces/options.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { changed, changedEnd, type Edges, EdgeFields, edgesAreRight } from './edge-fields.js';

type Clock = TimesView['clocks'][number];
type Stay = TimesView['stays'][number];
type Hold = TimesView['holds'][number];
type Attendance = TimesView['attendance'][number];

type Correcting<R> = { readonly row: R; readonly onClose: () => void };

interface Draft {
  readonly sending: Sending;
  readonly edges: Edges;
  readonly setEdges: (edges: Edges) => void;
  readonly words: string;
  readonly setWords: (words: string) => void;
  /** The times are right and there are words for the record. */
  readonly ready: boolean;
}

const useDraft = (row: { readonly fromAt: string; readonly toAt: string | null }): Draft => {
  const sending = useSend();
  const [edges, setEdges] = useState<Edges>({
    from: Date.parse(row.fromAt),
    to: row.toAt === null ? null : Date.parse(row.toAt),
  });
  const [words, setWords] = useState('');
  return { sending, edges, setEdges, words, setWords, ready: edgesAreRight(edges) && said(words) !== undefined };
};

/** Only what was changed is sent, so that what was right keeps its milliseconds. */
const edgesSent = (row: { readonly fromAt: string; readonly toAt: string | null }, { from, to }: Edges) => ({
  ...changed('fromAt', row.fromAt, from),
  ...changedEnd(row.toAt, to),
});

const WhyField = ({ draft }: { readonly draft: Draft }): ReactElement => {
  const { t } = useText();
  return (
    <TextArea
      label={t('times.why')}
      hint={t('times.bothKept')}
      value={draft.words}
      onChange={draft.setWords}
      rows={2}
      isRequired
    />
  );
};

type Lines = TimesView['lines'];

/** Other times, line or person for a clock; a forgotten one gets its end here. */
export const CorrectClockForm = (props: Correcting<Clock> & { readonly lines: Lines }): ReactElement => {
  const { row, lines, onClose } = props;
  const { t } = useText();
  const board = useBoard();
  const draft = useDraft(row);
  const [lineId, setLineId] = useState(row.lineId);
  const [personId, setPersonId] = useState(row.personId);
  const people = [...board.tables.person.values()].filter((one) => one.active || one.id === row.personId);
  const send = async (): Promise<void> => {
    const input = {
      clockId: row.id,
      version: row.version,
      ...edgesSent(row, draft.edges),
      ...(lineId === row.lineId ? {} : { lineId }),
      ...(personId === row.personId ? {} : { personId }),
      words: draft.words,
    };
    if (await draft.sending.run('correctClock', input, { text: 'times.done.correct' })) onClose();
  };
  return (
    <FormSheet
      heading={t('times.correct.clock')}
      command="correctClock"
      act={t('times.correct.act')}
      sending={draft.sending}
      ready={draft.ready}
      jobId={row.jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <EdgeFields edges={draft.edges} onChange={draft.setEdges} mayRun={row.toAt === null} />
      <Select
        label={t('times.line')}
        value={lineId}
        onChange={setLineId}
        options={lines.filter((one) => one.jobId === row.jobId).map(({ id, title }) => ({ value: id, label: title }))}
      />
      <Select
        label={t('times.person')}
        value={personId}
        onChange={setPersonId}
        options={people.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <WhyField draft={draft} />
    </FormSheet>
  );
};

/** Another bay, beginning or end of a stay. */
export const CorrectStayForm = ({ row, onClose }: Correcting<Stay>): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const draft = useDraft(row);
  const [bayId, setBayId] = useState(row.bayId);
  const bays = [...board.tables.bay.values()].sort((a, b) => a.position - b.position);
  const send = async (): Promise<void> => {
    const input = {
      placeId: row.id,
      version: row.version,
      ...edgesSent(row, draft.edges),
      ...(bayId === null || bayId === row.bayId ? {} : { bayId }),
      words: draft.words,
    };
    if (await draft.sending.run('correctStay', input, { text: 'times.done.correct' })) onClose();
  };
  return (
    <FormSheet
      heading={t('times.correct.stay')}
      command="correctStay"
      act={t('times.correct.act')}
      sending={draft.sending}
      ready={draft.ready}
      jobId={row.jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <EdgeFields edges={draft.edges} onChange={draft.setEdges} mayRun={row.toAt === null} />
      {bayId !== null && (
        <Select
          label={t('times.bay')}
          value={bayId}
          onChange={setBayId}
          options={bays.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      <p className="hf-quiet hf-small">{t('times.neighbours')}</p>
      <WhyField draft={draft} />
    </FormSheet>
  );
};

/** Another reason or other times for a hold. */
export const CorrectHoldForm = ({ row, onClose }: Correcting<Hold>): ReactElement => {
  const { t } = useText();
  const draft = useDraft(row);
  const [reason, setReason] = useState<HoldReason>(row.reason);
  const send = async (): Promise<void> => {
    const input = {
      holdId: row.id,
      version: row.version,
      ...edgesSent(row, draft.edges),
      ...(reason === row.reason ? {} : { reason }),
      words: draft.words,
    };
    if (await draft.sending.run('correctHold', input, { text: 'times.done.correct' })) onClose();
  };
  return (
    <FormSheet
      heading={t('times.correct.hold')}
      command="correctHold"
      act={t('times.correct.act')}
      sending={draft.sending}
      ready={draft.ready}
      jobId={row.jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <EdgeFields edges={draft.edges} onChange={draft.setEdges} mayRun={row.toAt === null} />
      <Select
        label={t('times.reason')}
        value={reason}
        onChange={setReason}
        options={optionsOf(holdReasons, (value) => t(`reason.${value}`))}
      />
      <WhyField draft={draft} />
    </FormSheet>
  );
};

/** Other times or another kind for a stretch of presence. */
export const CorrectAttendanceForm = ({ row, onClose }: Correcting<Attendance>): ReactElement => {
  const { t } = useText();
  const draft = useDraft(row);
  const [kind, setKind] = useState(row.kind);
  const send = async (): Promise<void> => {
    const input = {
      attendanceId: row.id,
      version: row.version,
      ...edgesSent(row, draft.edges),
      ...(kind === row.kind ? {} : { kind }),
      words: draft.words,
    };
    if (await draft.sending.run('correctAttendance', input, { text: 'times.done.correct' })) onClose();
  };
  return (
    <FormSheet
      heading={t('times.correct.attendance')}
      command="correctAttendance"
      act={t('times.correct.act')}
      sending={draft.sending}
      ready={draft.ready}
      onSend={() => void send()}
      onClose={onClose}
    >
      <EdgeFields edges={draft.edges} onChange={draft.setEdges} mayRun={row.toAt === null} />
      <Select
        label={t('times.kind')}
        value={kind}
        onChange={setKind}
        options={optionsOf(attendanceKinds, (value) => t(`word.attendance.${value}`))}
      />
      <WhyField draft={draft} />
    </FormSheet>
  );
};
