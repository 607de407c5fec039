import { calendarOfBoard } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet, Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { said } from '../pieces/typed.js';
import { useText, type Text } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';

type SeasonTyped = { readonly id: string; readonly name: string; readonly fromDay: string; readonly toDay: string };

const months = Array.from({ length: 12 }, (_, at) => String(at + 1).padStart(2, '0'));
const days = Array.from({ length: 31 }, (_, at) => String(at + 1).padStart(2, '0'));

/** "1 November" of any year; 2024 has a 29 February. */
const monthDayWords = (monthDay: string, { locale }: Pick<Text, 'locale'>): string =>
  new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    new Date(`2024-${monthDay}T00:00:00Z`),
  );

type MonthDayProps = { readonly label: string; readonly value: string; readonly onChange: (monthDay: string) => void };

/** A day of every year. */
const MonthDayField = ({ label, value, onChange }: MonthDayProps): ReactElement => {
  const { t, locale } = useText();
  const [month = '01', day = '01'] = value.split('-');
  const name = new Intl.DateTimeFormat(locale, { month: 'long', timeZone: 'UTC' });
  return (
    <div className="hf-pair">
      <Select
        label={t('shop.season.day', { which: label })}
        value={day}
        onChange={(changed) => {
          onChange(`${month}-${changed}`);
        }}
        options={days.map((one) => ({ value: one, label: String(Number(one)) }))}
      />
      <Select
        label={t('shop.season.month', { which: label })}
        value={month}
        onChange={(changed) => {
          onChange(`${changed}-${day}`);
        }}
        options={months.map((one) => ({ value: one, label: name.format(new Date(`2024-${one}-01T00:00:00Z`)) }))}
      />
    </div>
  );
};

const asTyped = ({ id, name, fromDay, toDay }: Row<'season'>): SeasonTyped => ({ id, name, fromDay, toDay });

type SeasonsFormProps = { readonly seasons: readonly Row<'season'>[]; readonly onClose: () => void };

/** All seasons at once: one taken out ends today, and what is dated by it keeps its words. */
const SeasonsForm = ({ seasons, onClose }: SeasonsFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const calendar = calendarOfBoard(useBoard());
  const [typed, setTyped] = useState<readonly SeasonTyped[]>(() => seasons.map(asTyped));
  const change = (id: string, part: Partial<SeasonTyped>): void => {
    setTyped((before) => before.map((one) => (one.id === id ? { ...one, ...part } : one)));
  };
  const send = async (): Promise<void> => {
    const today = calendar.dateOf(shopNow());
    const list = typed.map(({ id, name, fromDay, toDay }) => {
      const validFrom = seasons.find((season) => season.id === id)?.validFrom ?? today;
      return { seasonId: id, name: name.trim(), fromDay, toDay, validFrom };
    });
    if (
      await sending.run('setSeasons', { seasons: list }, { text: 'shop.done.seasons', values: { count: list.length } })
    )
      onClose();
  };
  return (
    <FormSheet
      heading={t('shop.season.heading')}
      command="setSeasons"
      act={t('shop.save')}
      sending={sending}
      ready={typed.every((season) => said(season.name) !== undefined)}
      onSend={() => void send()}
      onClose={onClose}
    >
      {typed.map((season) => (
        <fieldset key={season.id} className="hf-group">
          <legend>{season.name || t('shop.season.new')}</legend>
          <Field
            label={t('shop.season.name')}
            value={season.name}
            onChange={(name) => {
              change(season.id, { name });
            }}
          />
          <MonthDayField
            label={t('shop.season.first')}
            value={season.fromDay}
            onChange={(fromDay) => {
              change(season.id, { fromDay });
            }}
          />
          <MonthDayField
            label={t('shop.season.last')}
            value={season.toDay}
            onChange={(toDay) => {
              change(season.id, { toDay });
            }}
          />
          <Button
            size="small"
            label={t('shop.season.outAbout', { name: season.name })}
            onPress={() => {
              setTyped((before) => before.filter((one) => one.id !== season.id));
            }}
          >
            {t('shop.season.out')}
          </Button>
        </fieldset>
      ))}
      <Button
        onPress={() => {
          setTyped((before) => [...before, { id: newId(), name: '', fromDay: '11-01', toDay: '03-31' }]);
        }}
      >
        {t('shop.season.add')}
      </Button>
    </FormSheet>
  );
};

/** The seasons that this shop dates: limits of fixes and follow-ups can name them. */
export const SeasonsPart = ({ id }: { readonly id: string }): ReactElement => {
  const text = useText();
  const { t } = text;
  const { tables } = useBoard();
  const seasons = [...tables.season.values()]
    .filter((season) => season.endedOn === null)
    .sort((a, b) => (a.fromDay < b.fromDay ? -1 : 1));
  return (
    <Part
      id={id}
      heading={t('shop.seasons')}
      under={t('shop.seasonsUnder')}
      acts={
        <Opener label={t('shop.season.change')} command="setSeasons">
          {(close) => <SeasonsForm seasons={seasons} onClose={close} />}
        </Opener>
      }
    >
      {seasons.length === 0 && <p className="hf-quiet">{t('shop.season.none')}</p>}
      <Entries>
        {seasons.map((season) => (
          <Entry key={season.id}>
            <p>
              <span className="hf-entry-title">{season.name}</span>{' '}
              {t('shop.season.span', {
                from: monthDayWords(season.fromDay, text),
                to: monthDayWords(season.toDay, text),
              })}
            </p>
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};
