import { useState, type ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText, type Translate } from '../text/use-text.js';
import type { Formats } from '../text/format.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { optionsOf } from './options.js';
import { wholeOf } from './typed.js';

/** The limits of a fix or a follow-up as rows and sheets hold them; distances in the unit beside them. */
export type ShownLimits = {
  readonly beforeDay: string | null;
  readonly beforeOdometer: number | null;
  readonly withinDistance: number | null;
  readonly withinDays: number | null;
  readonly distanceUnit: 'km' | 'mi';
};

/** Each limit as a phrase of its own; the first one reached counts. */
export const limitPhrases = (
  limits: ShownLimits,
  season: string | null,
  { t, format }: { readonly t: Translate; readonly format: Formats },
): string[] => {
  const { beforeDay, beforeOdometer, withinDistance, withinDays, distanceUnit } = limits;
  return [
    ...(beforeDay === null ? [] : [t('piece.limit.beforeDay', { day: format.day(beforeDay) })]),
    ...(beforeOdometer === null
      ? []
      : [t('piece.limit.beforeOdometer', { reading: format.distance(beforeOdometer, distanceUnit) })]),
    ...(withinDistance === null
      ? []
      : [t('piece.limit.withinDistance', { distance: format.distance(withinDistance, distanceUnit) })]),
    ...(withinDays === null ? [] : [t('piece.limit.withinDays', { days: withinDays })]),
    ...(season === null ? [] : [t('piece.limit.season', { season })]),
  ];
};

/** The limits of a row that is read or on the board, in one line; empty when it has none. */
export const useLimitWords = (): ((limits: ShownLimits & { readonly seasonId: string | null }) => string) => {
  const text = useText();
  const board = useBoard();
  return (limits) => {
    const season = limits.seasonId === null ? null : (board.tables.season.get(limits.seasonId)?.name ?? null);
    return limitPhrases(limits, season, text).join(text.t('piece.limit.or'));
  };
};

type Typed = {
  readonly beforeDay: string;
  readonly beforeOdometer: string;
  readonly withinDistance: string;
  readonly withinDays: string;
  readonly seasonId: string;
};

const none = { beforeDay: '', beforeOdometer: '', withinDistance: '', withinDays: '', seasonId: '' };
const noSeason = 'none';

export type LimitsState = {
  readonly typed: Typed;
  readonly change: (part: Partial<Typed>) => void;
  /** As the wire wants them; empty where nothing was typed. */
  readonly input: {
    readonly beforeDay?: string | undefined;
    readonly beforeOdometer?: number | undefined;
    readonly withinDistance?: number | undefined;
    readonly withinDays?: number | undefined;
    readonly seasonId?: string | undefined;
    readonly distanceUnit?: 'km' | 'mi';
  };
  readonly isEmpty: boolean;
};

export const useLimits = (): LimitsState => {
  const [typed, setTyped] = useState<Typed>(none);
  const { distanceUnit } = useShopSettings();
  const beforeOdometer = wholeOf(typed.beforeOdometer) ?? undefined;
  const withinDistance = wholeOf(typed.withinDistance) ?? undefined;
  const withinDays = wholeOf(typed.withinDays) ?? undefined;
  const said = {
    beforeDay: typed.beforeDay === '' ? undefined : typed.beforeDay,
    beforeOdometer,
    withinDistance,
    withinDays,
    seasonId: typed.seasonId === '' ? undefined : typed.seasonId,
  };
  const isEmpty = Object.values(said).every((value) => value === undefined);
  const withUnit = beforeOdometer !== undefined || withinDistance !== undefined;
  return {
    typed,
    change: (part) => {
      setTyped((before) => ({ ...before, ...part }));
    },
    input: { ...said, ...(withUnit ? { distanceUnit } : {}) },
    isEmpty,
  };
};

/** Before when: any of five, the first one reached counts. */
export const LimitsFields = ({ limits }: { readonly limits: LimitsState }): ReactElement => {
  const { t } = useText();
  const { distanceUnit } = useShopSettings();
  const board = useBoard();
  const seasons = [...board.tables.season.values()].filter((season) => season.endedOn === null);
  const { typed, change } = limits;
  const number = (key: 'beforeOdometer' | 'withinDistance' | 'withinDays', label: string): ReactElement => (
    <Field
      label={label}
      value={typed[key]}
      onChange={(value) => {
        change({ [key]: value });
      }}
      wrong={wholeOf(typed[key]) === null ? t('piece.wrong.whole') : null}
    />
  );
  return (
    <fieldset className="hf-group">
      <legend>{t('piece.limits')}</legend>
      <DateField
        label={t('piece.limits.beforeDay')}
        value={typed.beforeDay}
        onChange={(beforeDay) => {
          change({ beforeDay });
        }}
      />
      <div className="hf-pair">
        {number('withinDays', t('piece.limits.withinDays'))}
        {number('withinDistance', t('piece.limits.withinDistance', { unit: distanceUnit }))}
      </div>
      {number('beforeOdometer', t('piece.limits.beforeOdometer', { unit: distanceUnit }))}
      {seasons.length > 0 && (
        <Select
          label={t('piece.limits.season')}
          value={typed.seasonId === '' ? noSeason : typed.seasonId}
          onChange={(seasonId) => {
            change({ seasonId: seasonId === noSeason ? '' : seasonId });
          }}
          options={[
            { value: noSeason, label: t('piece.limits.noSeason') },
            ...optionsOf(
              seasons.map((season) => season.id),
              (id) => seasons.find((season) => season.id === id)?.name ?? '',
            ),
          ]}
        />
      )}
    </fieldset>
  );
};
