import { calendarOfBoard, rowsOf } from '@holdfast/board';
import { settingOn } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Dated, Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { SettingsForm } from './settings-form.js';
import { useSettingWords } from './setting-words.js';
import { changesByDay, type DatedChanges, settingNames } from './settings.js';

const Changes = ({ heading, days }: { heading: string; days: readonly DatedChanges[] }): ReactElement | null => {
  const { t, format } = useText();
  const words = useSettingWords();
  if (days.length === 0) return null;
  return (
    <>
      <h3>{heading}</h3>
      <Dated
        lines={days.map(({ validFrom, changes }) => ({
          when: format.day(validFrom),
          what: changes.length === 0 ? t('shop.setting.nothing') : changes.map(words.change).join('; '),
        }))}
      />
    </>
  );
};

/** Settings that enter figures and rules: what holds now, what comes, what held before. */
export const SettingsPart = ({ id }: { readonly id: string }): ReactElement => {
  const { t } = useText();
  const words = useSettingWords();
  const board = useBoard();
  const rows = rowsOf(board);
  const today = calendarOfBoard(board).dateOf(useNow(60_000));
  const settings = rows.list('shopSetting');
  const now = settingOn(rows, today);
  const days = changesByDay(settings);
  return (
    <Part
      id={id}
      heading={t('shop.settings')}
      under={t('shop.settingsUnder')}
      acts={
        <Opener label={t('shop.change')} command="changeSettings" about={t('shop.settings')}>
          {(close) => <SettingsForm settings={settings} now={now} onClose={close} />}
        </Opener>
      }
    >
      <dl className="hf-shop-facts">
        {settingNames.map((name) => (
          <div key={name}>
            <dt>{words.name(name)}</dt>
            <dd>{words.value(name, now[name])}</dd>
          </div>
        ))}
      </dl>
      <Changes heading={t('shop.coming')} days={days.filter(({ validFrom }) => validFrom > today)} />
      <Changes heading={t('shop.sofar')} days={days.filter(({ validFrom }) => validFrom <= today)} />
    </Part>
  );
};
