// presence/ hides how it is known who is here. It guarantees that everybody says for themselves in one tap, on every
// screen, that they are here, on a break, on shop time or gone, and that nobody is shown as here because time passed.
import { hoursOfPerson, hoursOfShop, type Row, type Rows } from '@holdfast/domain';
import { calendarOf, type Calendar, type Interval } from '@holdfast/shop-calendar';

/** Instants are epoch ms of the shop. */
export type Presence =
  /** Here; on a clock where one runs. */
  | { readonly kind: 'present'; readonly since: number; readonly clock: Row<'clock'> | null }
  | { readonly kind: 'break'; readonly since: number }
  | { readonly kind: 'shopTime'; readonly since: number; readonly words: string | null }
  /** Here, on a break or on shop time on an earlier day, and nobody said that they had gone. */
  | { readonly kind: 'notEnded'; readonly since: number }
  /** Was here today. */
  | { readonly kind: 'gone'; readonly since: number }
  /** Hours of theirs are still to come today, or go on and nobody has said that they are here. */
  | { readonly kind: 'awaited'; readonly from: number; readonly isLate: boolean }
  | { readonly kind: 'notToday' };

/** When a person is to be here on a day: by the other hours of that day, their own hours, else those of the shop. */
export const hoursOn = (rows: Rows, personId: string, day: string): readonly Interval[] => {
  const own = calendarOf(hoursOfPerson(rows, personId) ?? hoursOfShop(rows));
  const { from, to } = own.dayBounds(day);
  return own.openIntervals(from, to);
};

const lastLeft = (rows: Rows, personId: string, today: Interval): number | null => {
  const left = rows
    .list('attendance', (one) => one.personId === personId && (one.toAt ?? 0) > today.from)
    .map((one) => one.toAt ?? 0);
  return left.length === 0 ? null : Math.max(...left);
};

const awaited = (hours: readonly Interval[], now: number): Presence => {
  const next = hours.find((one) => one.to > now);
  return next === undefined ? { kind: 'notToday' } : { kind: 'awaited', from: next.from, isLate: next.from <= now };
};

/** What is known of a person at `now`. A clock that runs says that they are here, also where nobody else said so. */
export const presenceOf = (rows: Rows, personId: string, now: number, calendar: Calendar): Presence => {
  const [clock] = rows.list('clock', (one) => one.personId === personId && one.toAt === null);
  const [running] = rows.list('attendance', (one) => one.personId === personId && one.toAt === null);
  if (clock !== undefined) return { kind: 'present', since: running?.fromAt ?? clock.fromAt, clock };
  if (running !== undefined) {
    const since = running.fromAt;
    if (calendar.workingDayOf(since) < calendar.workingDayOf(now)) return { kind: 'notEnded', since };
    if (running.kind === 'present') return { kind: 'present', since, clock: null };
    return running.kind === 'break' ? { kind: 'break', since } : { kind: 'shopTime', since, words: running.words };
  }
  const day = calendar.dateOf(now);
  const left = lastLeft(rows, personId, calendar.dayBounds(day));
  return left === null ? awaited(hoursOn(rows, personId, day), now) : { kind: 'gone', since: left };
};

const order = ['free', 'present', 'here', 'break', 'shopTime', 'awaited', 'notEnded', 'gone', 'notToday'] as const;
export type PresenceGroup = (typeof order)[number];

/** Who could begin some work stands first: a technician who is here and on no clock. Others are here. */
export const groupOf = ({ roles }: Pick<Row<'person'>, 'roles'>, presence: Presence): PresenceGroup => {
  if (presence.kind !== 'present' || presence.clock !== null) return presence.kind;
  return roles.includes('technician') ? 'free' : 'here';
};

export type PersonHere = {
  readonly person: Row<'person'>;
  readonly presence: Presence;
  readonly group: PresenceGroup;
};

/** Everybody who works here, those who are free first, each group by name. A wall screen is nobody. */
export const peopleHere = (rows: Rows, now: number, calendar: Calendar): PersonHere[] =>
  rows
    .list('person', (person) => person.active && person.roles.some((role) => role !== 'wallScreen'))
    .map((person) => {
      const presence = presenceOf(rows, person.id, now, calendar);
      return { person, presence, group: groupOf(person, presence) };
    })
    .sort((a, b) => order.indexOf(a.group) - order.indexOf(b.group) || a.person.name.localeCompare(b.person.name));
