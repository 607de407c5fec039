import type { AddPerson, ChangePerson } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { hasRole } from '../questions/people-and-shop.js';
import { live, runningClockOf } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import type { Role } from '../tables/words.js';
import { faultyHours, strikeEntriesOf } from './valid-from.js';

type Person = Pick<Row<'person'>, 'id' | 'name' | 'roles' | 'active'>;

/** What has to hold of each person, new or changed. People sign in by name, so no two who work here share one. */
function refusedPerson(rows: Rows, person: Person, input: AddPerson | ChangePerson): Refused | null {
  const key = foldKey(person.name);
  const namesake = rows.list('person', (one) => one.active && one.id !== person.id && foldKey(one.name) === key)[0];
  if (person.active && namesake) {
    return refuse('person.nameTaken', { personId: namesake.id }, { table: 'person', id: namesake.id });
  }
  if (person.roles.includes('wallScreen') && person.roles.length > 1) return refuse('person.wallScreenAlone');
  const named = (input.skills ?? []).map(({ skill }) => skill);
  const twice = named.find((skill, index) => named.indexOf(skill) !== index);
  if (twice !== undefined) return refuse('person.skillTwice', { skill: twice });
  return absent(rows, { bay: input.homeBayId }) ?? faultyHours(rows, input.hours);
}

function addHours(rows: Rows, at: Circumstances, personId: string, hours: AddPerson['hours']): void {
  if (!hours) return;
  const { validFrom, week, breaks } = hours;
  strikeEntriesOf(rows, 'personHours', validFrom, (row) => row.personId === personId);
  rows.add('personHours', { id: at.newId(), personId, validFrom, week, breaks });
}

/** The list is whole: a skill left out ends, one with another end date is a new entry. */
function setSkills(rows: Rows, at: Circumstances, personId: string, skills: AddPerson['skills']): void {
  if (!skills) return;
  const wanted = new Map(skills.map(({ skill, until }) => [skill, until ?? null]));
  for (const row of rows.list('personSkill', (one) => one.personId === personId)) {
    if (wanted.has(row.skill) && wanted.get(row.skill) === row.until) wanted.delete(row.skill);
    else rows.change('personSkill', row.id, { void: true });
  }
  for (const [skill, until] of wanted) rows.add('personSkill', { id: at.newId(), personId, skill, until });
}

const each = (roles: readonly Role[]): readonly Role[] => [...new Set(roles)];

/** A claim by the owner. The password is kept by the engine; without one the person cannot sign in yet. */
export const addPerson: CommandRule<'addPerson'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    if (rows.find('person', input.personId)) {
      return refuse('person.alreadyThere', { personId: input.personId ?? null });
    }
    const id = input.personId ?? at.newId();
    const person = { id, name: input.name.trim(), roles: each(input.roles), active: true };
    const refused = refusedPerson(rows, person, input);
    if (refused) return refused;
    rows.add('person', { ...person, homeBayId: input.homeBayId ?? null });
    setSkills(rows, at, id, input.skills);
    addHours(rows, at, id, input.hours);
    return { facts: { personId: id, roles: person.roles.join(' ') }, created: { person: id } };
  },
};

function refusedLeaving(rows: Rows, before: Row<'person'>, after: Person): Refused | null {
  const owners = rows.list('person', (one) => one.id !== after.id && one.active && hasRole(one, 'owner'));
  const staysOwner = after.active && hasRole(after, 'owner');
  if (owners.length === 0 && !staysOwner) return refuse('person.lastOwner', { personId: after.id });
  const clock = runningClockOf(rows, after.id);
  if (before.active && !after.active && clock) {
    const way = { table: 'clock', id: clock.id };
    return refuse('person.onClock', { personId: after.id, clockId: clock.id }, way);
  }
  return null;
}

/**
 * A turn on the person, by the owner. Whatever of a person changes makes a new version of the row, so that two who edit
 * skills or hours at once are told of each other.
 */
export const changePerson: CommandRule<'changePerson'> = {
  needs: (input) => ({ people: [input.personId] }),
  decide: (rows, input, at) => {
    const before = live(rows, 'person', input.personId);
    if (!before) return notThere('person', input.personId);
    const person = {
      id: before.id,
      name: input.name?.trim() ?? before.name,
      roles: input.roles ? each(input.roles) : before.roles,
      active: input.active ?? before.active,
    };
    const refused = refusedPerson(rows, person, input) ?? refusedLeaving(rows, before, person);
    if (refused) return refused;
    const { id, ...changed } = person;
    const homeBayId = input.homeBayId === undefined ? before.homeBayId : input.homeBayId;
    rows.change('person', id, { ...changed, homeBayId });
    setSkills(rows, at, id, input.skills);
    addHours(rows, at, id, input.hours);
    return { facts: { personId: id, roles: person.roles.join(' '), active: person.active } };
  },
};
