/**
 * SQL of the zone that the clock of the shop $1 followed at an instant (a timestamptz expression). The domain says the same
 * of rows as `zoneAt`; `first` is the zone that the shop was set up with.
 */
export function zoneWhen(
  instant: string,
  first = '(SELECT s."zone" FROM "shop" s WHERE s."shop_id" = $1 LIMIT 1)',
): string {
  return `coalesce((SELECT z."zone" FROM "shop_zone" z WHERE z."shop_id" = $1 AND NOT z."void"
    AND z."valid_from" <= (${instant} AT TIME ZONE z."zone")::date ORDER BY z."valid_from" DESC LIMIT 1), ${first})`;
}
