import type { Edit, TableName } from '@holdfast/domain';

/** Tables of the shop itself: in every bag, kept by each process between commands, on every board. */
export const shopTables = [
  'shop',
  'shopSetting',
  'openingHours',
  'season',
  'person',
  'personSkill',
  'personHours',
  'bay',
  'baySpec',
  'supplier',
  'shopZone',
  'hoursException',
  'outage',
  'liftInspection',
  'liftDecision',
  'closedMonth',
] as const satisfies readonly TableName[];

/** Whether a change makes the kept copies of the shop's rows stale. */
export function touchesShop(edits: readonly Edit[]): boolean {
  return edits.some((edit) => (shopTables as readonly TableName[]).includes(edit.table));
}
