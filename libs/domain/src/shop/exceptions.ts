/** Other hours on one day, of the shop or of one person: a holiday, a Saturday that is worked, somebody's afternoon off. */
import { faultsInRules, weekdayOf } from '@holdfast/shop-calendar';
import type { SetException } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { hoursOfPerson, hoursOfShop } from '../questions/hours.js';
import { validOn } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import { againstClosedMonth } from '../time/months.js';
import type { HoursOfDay } from '../tables/shop.js';

function faulty({ day, hours, breaks }: SetException): Refused | null {
  const exception = { date: day, hours, ...(breaks ? { breaks } : {}) };
  const fault = faultsInRules({ zone: 'UTC', hours: [], exceptions: [exception] })[0];
  return fault === undefined ? null : refuse('shop.hoursFaulty', { fault });
}

/** Other hours change the account of their day: those of a closed month stay as they are. */
function inClosedMonth(rows: Rows, at: Circumstances, day: string): Refused | null {
  const { from, to } = at.calendar.dayBounds(day);
  return againstClosedMonth(rows, at, [{ fromAt: from, toAt: to }]);
}

/** The breaks that are usual on the weekday; they count where they lie in the hours of that day. */
function usualBreaks(rows: Rows, { day, personId }: SetException): HoursOfDay {
  const rules = (personId === undefined ? null : hoursOfPerson(rows, personId)) ?? hoursOfShop(rows);
  return validOn(rules.hours, day)?.breaks[weekdayOf(day)] ?? [];
}

/** A claim. What was said of that day before, of the shop or of this person, is replaced and stays in the record as void. */
export const setException: CommandRule<'setException'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    const { exceptionId, day, hours } = input;
    if (rows.find('hoursException', exceptionId)) {
      return refuse('exception.alreadyThere', { exceptionId: exceptionId ?? null });
    }
    const refused = absent(rows, { person: input.personId }) ?? faulty(input) ?? inClosedMonth(rows, at, day);
    if (refused) return refused;
    const personId = input.personId ?? null;
    for (const { id } of rows.list('hoursException', (one) => one.day === day && one.personId === personId)) {
      rows.change('hoursException', id, { void: true });
    }
    const id = exceptionId ?? at.newId();
    const breaks = input.breaks ?? usualBreaks(rows, input);
    rows.add('hoursException', { id, ...recordedBy(at), day, personId, hours, breaks, words: input.words ?? null });
    return { facts: { day, personId, closed: hours.length === 0 }, created: { hoursException: id } };
  },
};

/** A turn: the usual hours hold on that day after all. */
export const endException: CommandRule<'endException'> = {
  needs: () => ({}),
  decide: (rows, { exceptionId }, at) => {
    const exception = live(rows, 'hoursException', exceptionId);
    if (!exception) return notThere('hoursException', exceptionId);
    const { day, personId } = exception;
    const closed = inClosedMonth(rows, at, day);
    if (closed) return closed;
    rows.change('hoursException', exceptionId, { void: true });
    return { facts: { day, personId } };
  },
};
