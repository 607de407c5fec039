import type { Row } from '@holdfast/domain';

type Setting = Row<'shopSetting'>;

/** The settings that people see, in the order of the screen. */
export const settingNames = [
  'graceMinutes',
  'tolerancePercent',
  'floorRecordsGoAheads',
  'recheckMinutes',
  'workGuaranteeMonths',
  'partGuaranteeMonths',
  'personFiguresToLeads',
] as const;
export type SettingName = (typeof settingNames)[number];
export type SettingValue = Setting[SettingName];

export type SettingChange = { readonly name: SettingName; readonly before: SettingValue; readonly after: SettingValue };

/** "5.00" and "5" are one tolerance. */
const isSame = (before: SettingValue, after: SettingValue): boolean =>
  before === after || (typeof before === 'string' && typeof after === 'string' && Number(before) === Number(after));

/** What a set of settings says otherwise than the one before it. */
export const changesBetween = (before: Setting, after: Setting): SettingChange[] =>
  settingNames
    .filter((name) => !isSame(before[name], after[name]))
    .map((name) => ({ name, before: before[name], after: after[name] }));

export type DatedChanges = {
  readonly id: string;
  readonly validFrom: string;
  readonly changes: readonly SettingChange[];
};

/** Each day from which something else holds, the last first, with what it changes; the first settings of a shop change nothing. */
export const changesByDay = (settings: readonly Setting[]): DatedChanges[] =>
  [...settings]
    .sort((a, b) => (a.validFrom < b.validFrom ? -1 : 1))
    .flatMap((after, at, all) => {
      const before = all[at - 1];
      return before === undefined
        ? []
        : [{ id: after.id, validFrom: after.validFrom, changes: changesBetween(before, after) }];
    })
    .reverse();
