// record/ hides how the shop's log is read: which part of it, as sentences or as a file, and by whom it was read. It
// guarantees that every look at it is one that the server keeps.
import type { ChangeLogPage, LogReadsPage } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import './record.css';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { usePages } from '../live/use-pages.js';
import { useLogSentence } from '../pieces/log-list.js';
import { Dated, Part } from '../pieces/part.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText, type Text } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { type Filter, filterQuery } from './filter.js';
import { FilterFields } from './filter-fields.js';

type Item = ChangeLogPage['items'][number];
const noTitles: ReadonlyMap<string, string> = new Map();

/** What an entry is about, by the words people know it by. */
const aboutOf = ({ about }: Item, { t }: Text): string =>
  [
    ...about.jobs.map(({ number }) => t('record.jobNamed', { number: String(number) })),
    ...about.vehicles.map(({ plate }) => plate),
    ...about.bays.map(({ name }) => name),
  ].join(', ');

const EntriesPart = ({ filter }: { readonly filter: Filter }): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const sentence = useLogSentence();
  const query = filterQuery(filter);
  // Looking is kept by the server: the record is read when it is asked for, not at every change of the shop.
  const read = usePages<ChangeLogPage>(`/api/change-log?limit=50${query}`, []);
  const items = read.pages.flatMap((page) => page.items);
  const line = (item: Item): { when: string; what: string } => {
    const said = sentence(item, noTitles);
    const about = aboutOf(item, text);
    const whole = about === '' ? said : t('record.about', { sentence: said, about });
    const name = item.personId === null ? t('record.nobody') : people.get(item.personId)?.name;
    return {
      when: format.moment(Date.parse(item.at), now),
      what: name === undefined ? whole : t('log.by', { sentence: whole, name }),
    };
  };
  return (
    <Part
      heading={t('record.entries')}
      acts={
        <>
          <a href={`/api/change-log?format=csv${query}`} download>
            {t('record.csv')}
          </a>
          <a href={`/api/change-log?format=jsonl${query}`} download>
            {t('record.jsonl')}
          </a>
        </>
      }
    >
      {read.isFailed && <p className="hf-quiet">{t('live.unreachable')}</p>}
      {!read.isPending && !read.isFailed && items.length === 0 && <p className="hf-quiet">{t('record.none')}</p>}
      <Dated lines={items.map(line)} />
      {read.more !== null && (
        <div className="hf-row">
          <Button size="small" onPress={read.more}>
            {t('record.more')}
          </Button>
        </div>
      )}
    </Part>
  );
};

const ReadersPart = (): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const read = usePages<LogReadsPage>('/api/change-log/reads?limit=20', []);
  const items = read.pages.flatMap((page) => page.items);
  const words = (filter: Readonly<Record<string, string>>): string => {
    const said = (['person', 'command', 'job', 'vehicle', 'bay', 'from', 'to', 'after'] as const).flatMap((name) => {
      const value = filter[name];
      if (value === undefined) return [];
      if (name === 'person') return [t('record.filter.person', { name: people.get(value)?.name ?? value })];
      if (name === 'from' || name === 'to') return [t(`record.filter.${name}`, { day: format.day(value) })];
      return [t(`record.filter.${name}`)];
    });
    return said.length === 0 ? t('record.all') : said.join(', ');
  };
  return (
    <Part heading={t('record.readers')} under={t('record.readersUnder')}>
      {!read.isPending && items.length === 0 && <p className="hf-quiet">{t('record.readersNone')}</p>}
      <Dated
        lines={items.map(({ readAt, personId, filter, form, entries }) => {
          const name = people.get(personId)?.name ?? t('record.nobody');
          const said = t('record.readBy', { name, count: entries, form });
          return {
            when: format.moment(Date.parse(readAt), now),
            what: t('record.readOf', { read: said, filter: words(filter) }),
          };
        })}
      />
      {read.more !== null && (
        <div className="hf-row">
          <Button size="small" onPress={read.more}>
            {t('record.readersMore')}
          </Button>
        </div>
      )}
    </Part>
  );
};

const TheRecord = (): ReactElement => {
  const { t } = useText();
  const [filter, setFilter] = useState<Filter>({});
  if (!useMay().read('changeLog')) {
    return (
      <>
        <ScreenHead heading={t('record.heading')} />
        <EmptyState heading={t('record.notYours')} />
      </>
    );
  }
  return (
    <div className="hf-read">
      <ScreenHead heading={t('record.heading')} under={t('record.under')} />
      <FilterFields filter={filter} onChange={setFilter} />
      <EntriesPart filter={filter} />
      <ReadersPart />
    </div>
  );
};

/** The log of the shop, and who read it. */
export const RecordScreen = (): ReactElement => (
  <SignedIn>
    <TheRecord />
  </SignedIn>
);
