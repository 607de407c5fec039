import { isTextKey, type LogEntryView, type TextValues } from '@holdfast/contract';
import { holdReasons } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Dated } from './part.js';

type LogListProps = {
  /** Newest first. */
  readonly entries: readonly LogEntryView[];
  /** Titles of rows by their id: lines, parts, fixes, follow-ups, findings, cautions. */
  readonly titles: ReadonlyMap<string, string>;
};

const subjectKeys = [
  'lineId',
  'partLineId',
  'temporaryFixId',
  'followUpId',
  'findingId',
  'cautionId',
  'concernId',
  'causeId',
  'subletId',
  'questionId',
  'bayId',
];
const nothing = 'empty';

/** What was entered as a sentence; the titles of rows, where they are known, say about what. */
export const useLogSentence = (): ((entry: LogEntryView, titles: ReadonlyMap<string, string>) => string) => {
  const { t, format } = useText();
  const now = useNow(60_000);
  return ({ command, facts }, titles) => {
    const key = `log.${command}`;
    if (!isTextKey(key)) return command;
    const word = (name: string): string => (typeof facts[name] === 'string' ? facts[name] : nothing);
    const subject = subjectKeys.map((name) => titles.get(word(name))).find((title) => title !== undefined);
    const reason = holdReasons.find((one) => one === facts['reason']);
    const promised = Date.parse(word('promisedAt'));
    const values: TextValues = {
      about: subject ?? nothing,
      answer: word('answer'),
      outcome: word('outcome'),
      how: word('how'),
      kind: word('kind'),
      month: word('month'),
      reason: reason === undefined ? nothing : t(`reason.${reason}`),
      promised: Number.isNaN(promised) ? nothing : format.moment(promised, now),
    };
    return t(key, values);
  };
};

/** What was recorded, as sentences with their day and who; made from command and facts, which hold no names. */
export const LogList = ({ entries, titles }: LogListProps): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const sentence = useLogSentence();
  return (
    <Dated
      lines={entries.map((entry) => {
        const name = entry.personId === null ? null : (people.get(entry.personId)?.name ?? null);
        const words = sentence(entry, titles);
        return {
          when: format.moment(Date.parse(entry.effectiveAt), now),
          what: name === null ? words : t('log.by', { sentence: words, name }),
        };
      })}
    />
  );
};
