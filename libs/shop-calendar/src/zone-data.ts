/**
 * Whether the zone data of this machine knows the newest rules.
 *
 * This library brings no zone data: it uses what the machine's JavaScript engine has (`process.versions.tz` under
 * Node; a browser does not say). The engine's data can be older than a law. So what it answers is probed here, without
 * a version: a zone is stale when the answer is not the published one.
 */
import { localParts } from './local-clock.js';

interface PublishedOffset {
  readonly zone: string;
  readonly at: number;
  readonly offsetMinutes: number;
  readonly source: string;
}

/**
 * British Columbia stays at UTC-7 and Alberta, with Inuvik, at UTC-6 from 1 November 2026. Source: IANA tz database,
 * list patches of 2026-03-07 and 2026-05-14, all in release 2026d.
 */
const published: readonly PublishedOffset[] = [
  { zone: 'America/Vancouver', offsetMinutes: -420 },
  { zone: 'America/Edmonton', offsetMinutes: -360 },
  { zone: 'America/Inuvik', offsetMinutes: -360 },
].map((one) => ({ ...one, at: Date.UTC(2026, 11, 1, 12), source: 'IANA tz database, release 2026d' }));

/** A zone for which this machine's answer differs from the published one. */
export interface StaleZone {
  readonly zone: string;
  /** the instant asked about, epoch milliseconds */
  readonly at: number;
  /** local minus UTC, minutes, as published and as used here */
  readonly publishedOffsetMinutes: number;
  readonly usedOffsetMinutes: number;
  readonly source: string;
}

/** The zones known to be stale on this machine; empty where its data is as new as the facts listed here. */
export function staleZones(): StaleZone[] {
  return published
    .map(({ zone, at, offsetMinutes, source }) => ({
      zone,
      at,
      publishedOffsetMinutes: offsetMinutes,
      usedOffsetMinutes: localParts(at, zone).offsetMinutes,
      source,
    }))
    .filter((one) => one.usedOffsetMinutes !== one.publishedOffsetMinutes);
}
