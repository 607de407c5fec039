import type { TimesView } from '@holdfast/contract';
import { attendanceKinds } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSignedIn } from '../live/session.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { optionsOf } from '../pieces/options.js';
import { isoOf, said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { type Edges, EdgeFields, edgesAreRight } from './edge-fields.js';

type Adding = {
  /** Where the fields begin, epoch ms. */
  readonly from: number | null;
  readonly onClose: () => void;
};

const useEdges = (from: number | null) => useState<Edges>({ from, to: null });
const isWhole = (edges: Edges): boolean => edgesAreRight(edges) && edges.to !== null;

const Why = (props: { readonly value: string; readonly onChange: (words: string) => void }): ReactElement => {
  const { t } = useText();
  return <TextArea label={t('times.why')} value={props.value} onChange={props.onChange} rows={2} isRequired />;
};

/** People of the shop who could have been here. */
const usePeople = () => {
  const board = useBoard();
  return [...board.tables.person.values()]
    .filter((one) => one.active)
    .map(({ id, name }) => ({ value: id, label: name }));
};

/** Time worked on a line that nobody clocked. */
export const AddClockForm = (props: Adding & { readonly lines: TimesView['lines'] }): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const { person } = useSignedIn();
  const people = usePeople();
  const [edges, setEdges] = useEdges(props.from);
  const [lineId, setLineId] = useState(props.lines[0]?.id ?? '');
  const [personId, setPersonId] = useState(person.id);
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { lineId, personId, fromAt: isoOf(edges.from) ?? '', toAt: isoOf(edges.to) ?? '', words };
    if (await sending.run('addClock', input, { text: 'times.done.add' })) props.onClose();
  };
  return (
    <FormSheet
      heading={t('times.add.clock')}
      command="addClock"
      act={t('times.add.act')}
      sending={sending}
      ready={isWhole(edges) && lineId !== '' && said(words) !== undefined}
      onSend={() => void send()}
      onClose={props.onClose}
    >
      <EdgeFields edges={edges} onChange={setEdges} />
      <Select
        label={t('times.line')}
        value={lineId}
        onChange={setLineId}
        options={props.lines.map(({ id, title }) => ({ value: id, label: title }))}
      />
      <Select label={t('times.person')} value={personId} onChange={setPersonId} options={people} />
      <Why value={words} onChange={setWords} />
    </FormSheet>
  );
};

/** Where the vehicle stood for a time; what is recorded of that time makes room. */
export const AddStayForm = (props: Adding & { readonly jobId: string }): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const board = useBoard();
  const bays = [...board.tables.bay.values()].sort((a, b) => a.position - b.position);
  const [edges, setEdges] = useEdges(props.from);
  const [kind, setKind] = useState<'bay' | 'yard'>('bay');
  const [bayId, setBayId] = useState(bays[0]?.id ?? '');
  const [yardSpot, setYardSpot] = useState('');
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const where = kind === 'bay' ? { bayId } : { yardSpot: said(yardSpot) };
    const stretch = { fromAt: isoOf(edges.from) ?? '', toAt: isoOf(edges.to) ?? '' };
    const input = { jobId: props.jobId, kind, ...where, ...stretch, words };
    if (await sending.run('addStay', input, { text: 'times.done.add' })) props.onClose();
  };
  return (
    <FormSheet
      heading={t('times.add.stay')}
      command="addStay"
      act={t('times.add.act')}
      sending={sending}
      ready={isWhole(edges) && said(words) !== undefined}
      jobId={props.jobId}
      onSend={() => void send()}
      onClose={props.onClose}
    >
      <EdgeFields edges={edges} onChange={setEdges} />
      <Choice
        label={t('times.where')}
        value={kind}
        onChange={setKind}
        options={optionsOf(['bay', 'yard'] as const, (value) => t(`times.where.${value}`))}
      />
      {kind === 'bay' ? (
        <Select
          label={t('times.bay')}
          value={bayId}
          onChange={setBayId}
          options={bays.map(({ id, name }) => ({ value: id, label: name }))}
        />
      ) : (
        <Field label={t('times.yardSpot')} value={yardSpot} onChange={setYardSpot} code />
      )}
      <Why value={words} onChange={setWords} />
    </FormSheet>
  );
};

/** Presence, a break or shop time that was missing. */
export const AddAttendanceForm = (props: Adding): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const { person } = useSignedIn();
  const people = usePeople();
  const [edges, setEdges] = useEdges(props.from);
  const [kind, setKind] = useState<(typeof attendanceKinds)[number]>('present');
  const [personId, setPersonId] = useState(person.id);
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { personId, kind, fromAt: isoOf(edges.from) ?? '', toAt: isoOf(edges.to) ?? '', words };
    if (await sending.run('addAttendance', input, { text: 'times.done.add' })) props.onClose();
  };
  return (
    <FormSheet
      heading={t('times.add.attendance')}
      command="addAttendance"
      act={t('times.add.act')}
      sending={sending}
      ready={isWhole(edges) && said(words) !== undefined}
      onSend={() => void send()}
      onClose={props.onClose}
    >
      <Select label={t('times.person')} value={personId} onChange={setPersonId} options={people} />
      <Select
        label={t('times.kind')}
        value={kind}
        onChange={setKind}
        options={optionsOf(attendanceKinds, (value) => t(`word.attendance.${value}`))}
      />
      <EdgeFields edges={edges} onChange={setEdges} />
      <Why value={words} onChange={setWords} />
    </FormSheet>
  );
};
