import { isTextKey } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useEntries } from '../live/send.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { SentEntry } from '../ui/sent-entry.js';

const mostShown = 6;

/** What was entered last on this device, each with its sent mark. */
export const LastEntries = ({ now }: { readonly now: number }): ReactElement => {
  const { t, format } = useText();
  const entries = useEntries((state) => state.entries).slice(0, mostShown);
  const nameOf = (command: string): string => {
    const key = `bay.entry.${command}`;
    return isTextKey(key) ? t(key) : t('bay.entry.other');
  };
  return (
    <Part heading={t('bay.entries')}>
      {entries.length === 0 ? (
        <p className="hf-quiet">{t('bay.entriesNone')}</p>
      ) : (
        <Entries>
          {entries.map((entry) => (
            <Entry key={entry.key}>
              <span className="hf-entry-line">
                <time className="hf-quiet hf-small">{format.moment(entry.at, now)}</time>
                <span>{nameOf(entry.name)}</span>
                <SentEntry state={entry.state} />
              </span>
              {entry.problem !== null && <span className="hf-small">{entry.problem.detail}</span>}
            </Entry>
          ))}
        </Entries>
      )}
    </Part>
  );
};
