import type { Board } from '@holdfast/board';
import type { RecordAttendance, Row } from '@holdfast/domain';

import { newId } from '../live/send.js';
import { useSend, type Sending } from '../live/use-send.js';
import { isoOf } from '../pieces/typed.js';
import { keepWords } from './last-words.js';

export type Said = RecordAttendance['kind'];

type Saying = {
  readonly kind: Said;
  readonly words?: string | undefined;
  /** Epoch ms; now where left out. */
  readonly at?: number | null;
};

export type Telling = {
  readonly sending: Sending;
  readonly say: (saying: Saying) => Promise<boolean>;
};

/** Says that a person is here, on a break, on shop time or gone; where that stops their clock, the Undo bar says so. */
export const useSaying = (board: Board, person: Pick<Row<'person'>, 'id' | 'name'>, isOwn: boolean): Telling => {
  const sending = useSend();
  const say = async ({ kind, words, at = null }: Saying): Promise<boolean> => {
    const clock = [...board.tables.clock.values()].find((one) => one.personId === person.id && one.toAt === null);
    const stops = kind !== 'present' && clock !== undefined;
    const line = board.tables.workLine.get(clock?.lineId ?? '')?.title ?? '';
    const input = {
      ...(kind === 'gone' ? {} : { attendanceId: newId() }),
      ...(isOwn ? {} : { personId: person.id }),
      kind,
      words,
      at: isoOf(at),
    };
    const values = { kind, name: person.name, own: isOwn ? 'yes' : 'no', line: stops ? line : 'empty' };
    const sent = await sending.run('recordAttendance', input, { text: 'presence.done', values });
    if (sent === null) return false;
    if (words !== undefined) keepWords(person.id, words);
    return true;
  };
  return { sending, say };
};
