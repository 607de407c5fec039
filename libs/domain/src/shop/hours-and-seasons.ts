import { faultsInSeason } from '@holdfast/shop-calendar';
import type { SetSeasons } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { todayOf } from '../questions/people-and-shop.js';
import { notThere } from '../questions/references.js';
import { faultyHours, strikeEntriesOf } from './valid-from.js';

/** A claim: opening hours and breaks by weekday, from a day of the shop's zone on. */
export const setOpeningHours: CommandRule<'setOpeningHours'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    const faulty = faultyHours(rows, input);
    if (faulty) return faulty;
    const { validFrom, week, breaks } = input;
    strikeEntriesOf(rows, 'openingHours', validFrom);
    const { id } = rows.add('openingHours', { id: at.newId(), validFrom, week, breaks });
    return { facts: { validFrom }, created: { openingHours: id } };
  },
};

function refusedSeasons(rows: Rows, { seasons }: SetSeasons): Refused | null {
  const names = new Set<string>();
  const ids = new Set<string>();
  for (const { seasonId, name, fromDay, toDay } of seasons) {
    if (seasonId !== undefined && rows.find('season', seasonId)?.void === true) return notThere('season', seasonId);
    const key = foldKey(name);
    if (names.has(key) || (seasonId !== undefined && ids.has(seasonId))) {
      return refuse('season.twice', { seasonName: name });
    }
    names.add(key);
    if (seasonId !== undefined) ids.add(seasonId);
    const fault = faultsInSeason({ name, from: fromDay, to: toDay })[0];
    if (fault !== undefined) return refuse('shop.seasonFaulty', { fault });
  }
  return null;
}

function putSeason(rows: Rows, at: Circumstances, season: SetSeasons['seasons'][number]): string {
  const { seasonId, fromDay, toDay, validFrom } = season;
  const facts = { name: season.name.trim(), fromDay, toDay, validFrom, endedOn: null };
  if (seasonId === undefined || !rows.find('season', seasonId)) {
    return rows.add('season', { id: seasonId ?? at.newId(), ...facts }).id;
  }
  return rows.change('season', seasonId, facts).id;
}

/** A claim: the whole list of the seasons that this shop dates. One left out ends today; one named again goes on. */
export const setSeasons: CommandRule<'setSeasons'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    const refused = refusedSeasons(rows, input);
    if (refused) return refused;
    const before = rows.list('season', (season) => season.endedOn === null);
    const kept = new Set(input.seasons.map((season) => putSeason(rows, at, season)));
    const leftOut = before.filter((season) => !kept.has(season.id));
    for (const season of leftOut) rows.change('season', season.id, { endedOn: todayOf(at) });
    return { facts: { seasons: kept.size, ended: leftOut.length } };
  },
};
