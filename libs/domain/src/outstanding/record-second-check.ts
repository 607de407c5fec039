import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { hasRole, hasSkill, settingOn, todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { tierOf } from '../tables/words.js';

const minuteMs = 60_000;

/** The one technician of the shop; null where there are several, or none. */
function onlyTechnician(rows: Rows): string | null {
  const technicians = rows.list('person', (person) => person.active && hasRole(person, 'technician'));
  return technicians.length === 1 ? (technicians[0]?.id ?? null) : null;
}

/**
 * Rule 7: another person checks. Only in a shop with one technician that has set an interval may that technician check
 * their own fix, on a system of tier 2, once the interval since it was made is over. Tier 1 never.
 */
function refusedSamePerson(rows: Rows, at: Circumstances, fix: Row<'temporaryFix'>): Refused | null {
  const tier = tierOf(fix.system);
  const { recheckMinutes } = settingOn(rows, todayOf(at));
  if (tier !== 2 || recheckMinutes === null || onlyTechnician(rows) !== fix.byId) {
    return refuse('fix.checkBySamePerson', { temporaryFixId: fix.id, tier });
  }
  const left = fix.since + recheckMinutes * minuteMs - at.effectiveAt;
  if (left <= 0) return null;
  return refuse('fix.recheckTooEarly', { temporaryFixId: fix.id, minutes: Math.ceil(left / minuteMs) });
}

/** A turn by the person who made the check, with the skill "second check" valid today. */
export const recordSecondCheck: CommandRule<'recordSecondCheck'> = {
  needs: (input) => ({ fixes: [input.temporaryFixId] }),
  decide: (rows, input, at) => {
    const fix = live(rows, 'temporaryFix', input.temporaryFixId);
    if (!fix) return notThere('temporaryFix', input.temporaryFixId);
    const { id: temporaryFixId, state, vehicleId } = fix;
    if (rows.find('secondCheck', input.secondCheckId)) {
      return refuse('fix.checkAlreadyThere', { secondCheckId: input.secondCheckId ?? null });
    }
    if (state !== 'on') return refuse('fix.notOn', { temporaryFixId, state });
    const { personId } = at.by;
    if (personId === null || !hasSkill(rows, personId, 'secondCheck', todayOf(at))) {
      return refuse('fix.checkSkillMissing', { personId });
    }
    const samePerson = fix.byId === personId;
    const refused = samePerson ? refusedSamePerson(rows, at, fix) : null;
    if (refused) return refused;
    const secondCheckId = input.secondCheckId ?? at.newId();
    rows.add('secondCheck', {
      id: secondCheckId,
      ...recordedBy(at),
      temporaryFixId,
      vehicleId,
      personId,
      samePerson,
      words: input.words ?? null,
    });
    return {
      facts: { vehicleId, temporaryFixId, samePerson, tier: tierOf(fix.system) },
      created: { secondCheck: secondCheckId },
    };
  },
};
