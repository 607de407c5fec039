import { calendarOfBoard } from '@holdfast/board';
import { type CommandInputs, type Row, validOn } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf, wholeOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { changesBetween } from './settings.js';

type Setting = Row<'shopSetting'>;
type Typed = {
  readonly graceMinutes: string;
  readonly tolerancePercent: string;
  readonly recheckMinutes: string;
  readonly workGuaranteeMonths: string;
  readonly partGuaranteeMonths: string;
  readonly floorRecordsGoAheads: boolean;
  readonly personFiguresToLeads: boolean;
};

const text = (value: number | null): string => (value === null ? '' : String(value));

const typedOf = (setting: Setting): Typed => ({
  graceMinutes: text(setting.graceMinutes),
  tolerancePercent: setting.tolerancePercent,
  recheckMinutes: text(setting.recheckMinutes),
  workGuaranteeMonths: text(setting.workGuaranteeMonths),
  partGuaranteeMonths: text(setting.partGuaranteeMonths),
  floorRecordsGoAheads: setting.floorRecordsGoAheads,
  personFiguresToLeads: setting.personFiguresToLeads,
});

/** The settings as typed; null while a field holds what is none. */
const settingOf = (before: Setting, typed: Typed): Setting | null => {
  const graceMinutes = wholeOf(typed.graceMinutes);
  const tolerancePercent = decimalOf(typed.tolerancePercent);
  const orNone = {
    recheckMinutes: wholeOf(typed.recheckMinutes),
    workGuaranteeMonths: wholeOf(typed.workGuaranteeMonths),
    partGuaranteeMonths: wholeOf(typed.partGuaranteeMonths),
  };
  if (graceMinutes == null || tolerancePercent == null || Object.values(orNone).includes(null)) return null;
  const { recheckMinutes = null, workGuaranteeMonths = null, partGuaranteeMonths = null } = orNone;
  const { floorRecordsGoAheads, personFiguresToLeads } = typed;
  const told = { graceMinutes, tolerancePercent, recheckMinutes, workGuaranteeMonths, partGuaranteeMonths };
  return { ...before, ...told, floorRecordsGoAheads, personFiguresToLeads };
};

type FieldsProps = { readonly typed: Typed; readonly change: (part: Partial<Typed>) => void };

const Fields = ({ typed, change }: FieldsProps): ReactElement => {
  const { t } = useText();
  const whole = (key: 'graceMinutes' | 'recheckMinutes' | 'workGuaranteeMonths' | 'partGuaranteeMonths') => (
    <Field
      label={t(`shop.setting.in.${key}`)}
      hint={t(`shop.setting.hint.${key}`)}
      value={typed[key]}
      onChange={(value) => {
        change({ [key]: value });
      }}
      wrong={wholeOf(typed[key]) === null ? t('piece.wrong.whole') : null}
    />
  );
  const tick = (key: 'floorRecordsGoAheads' | 'personFiguresToLeads') => (
    <div>
      <Tick
        label={t(`shop.setting.${key}`)}
        value={typed[key]}
        onChange={(value) => {
          change({ [key]: value });
        }}
      />
      <p className="hf-hint hf-under-tick">{t(`shop.setting.hint.${key}`)}</p>
    </div>
  );
  return (
    <>
      {whole('graceMinutes')}
      <Field
        label={t('shop.setting.in.tolerancePercent')}
        hint={t('shop.setting.hint.tolerancePercent')}
        value={typed.tolerancePercent}
        onChange={(tolerancePercent) => {
          change({ tolerancePercent });
        }}
        wrong={decimalOf(typed.tolerancePercent) == null ? t('piece.wrong.amount') : null}
      />
      {whole('workGuaranteeMonths')}
      {whole('partGuaranteeMonths')}
      {whole('recheckMinutes')}
      {tick('floorRecordsGoAheads')}
      {tick('personFiguresToLeads')}
    </>
  );
};

type SettingsFormProps = { readonly settings: readonly Setting[]; readonly now: Setting; readonly onClose: () => void };

/** Other settings from a day on: only what is said otherwise is sent, so that the rest follows what holds by then. */
export const SettingsForm = ({ settings, now, onClose }: SettingsFormProps): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const today = calendarOfBoard(useBoard()).dateOf(shopNow());
  const [validFrom, setValidFrom] = useState(today);
  const [typed, setTyped] = useState<Typed>(() => typedOf(now));
  const setting = settingOf(now, typed);
  const held = validOn(settings, validFrom === '' ? today : validFrom) ?? now;
  const changes = setting === null ? [] : changesBetween(now, setting);
  const send = async (): Promise<void> => {
    const told = Object.fromEntries(changes.map(({ name, after }) => [name, after]));
    const input: CommandInputs['changeSettings'] = { validFrom, ...told };
    const values = { day: format.day(validFrom), count: changes.length };
    if (await sending.run('changeSettings', input, { text: 'shop.done.settings', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('shop.setting.heading')}
      command="changeSettings"
      act={t('shop.save')}
      sending={sending}
      ready={setting !== null && changes.length > 0 && validFrom >= today}
      onSend={() => void send()}
      onClose={onClose}
    >
      <DateField
        label={t('shop.validFrom')}
        hint={held.id === now.id ? t('shop.validFromHint') : t('shop.setting.onlyChanged')}
        value={validFrom}
        onChange={setValidFrom}
        wrong={validFrom !== '' && validFrom < today ? t('shop.notBeforeToday') : null}
      />
      <Fields
        typed={typed}
        change={(part) => {
          setTyped((before) => ({ ...before, ...part }));
        }}
      />
    </FormSheet>
  );
};
