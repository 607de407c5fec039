import { isoText } from './wire-sql.js';

/** A vehicle's id, plate and description as JSON; `v` is the alias of its row. */
export const vehicleNameOf = (v: string) =>
  `json_build_object('id', ${v}."id", 'plate', ${v}."plate", 'description', ${v}."description")`;

/** Id and name of the customer of an outer join as JSON, or null. */
export const customerNameOf = (c: string) =>
  `CASE WHEN ${c}."id" IS NULL THEN NULL ELSE json_build_object('id', ${c}."id", 'name', ${c}."name") END`;

/** `JobItem` of the contract for a row `j` of job, in a shop $1. */
export const jobItem = `json_build_object(
  'id', j."id", 'number', j."number", 'kind', j."kind", 'comebackOfLineId', j."comeback_of_line_id", 'expectedAt', ${isoText('j."expected_at"')},
  'arrivedAt', ${isoText('j."arrived_at"')}, 'checkedInAt', ${isoText('j."checked_in_at"')},
  'promisedAt', ${isoText('j."promised_at"')}, 'endedAt', ${isoText('j."ended_at"')}, 'endedHow', j."ended_how", 'leftBy', j."left_by",
  'waitsHere', j."waits_here", 'vehicle', ${vehicleNameOf('v')}, 'customer', ${customerNameOf('c')},
  'lines', (SELECT count(*) FROM "work_line" l WHERE l."shop_id" = $1 AND l."job_id" = j."id" AND NOT l."void"),
  'openHolds', (SELECT coalesce(json_agg(h."reason" ORDER BY h."from_at", h."id"), '[]'::json) FROM "hold" h
    WHERE h."shop_id" = $1 AND h."job_id" = j."id" AND NOT h."void" AND h."to_at" IS NULL))`;

export const jobItemFrom = `"job" j
  JOIN "vehicle" v ON v."shop_id" = j."shop_id" AND v."id" = j."vehicle_id"
  LEFT JOIN "customer" c ON c."shop_id" = j."shop_id" AND c."id" = j."customer_id"`;
