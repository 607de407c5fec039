/**
 * The floor of the demo's shop while its past is acted out: what time it is, who is free, which bay is free, and the
 * scripts that run side by side. A script is a generator that yields the instant at which it goes on (epoch ms).
 */
import type { CommandInputs, CommandName } from '@holdfast/domain';
import { addDays, type Calendar, firstEndingAfter, type Interval, subtract } from '@holdfast/shop-calendar';
import type { BayKey, PersonKey, SupplierKey, Technician } from './cast.js';
import { technicians } from './cast.js';
import type { Chance } from './chance.js';
import type { Ledger, Sender } from './ledger.js';

/** Yields when to go on; returns what the caller waits for. */
export type Script<T = void> = Generator<number, T, void>;

export interface FloorBay {
  readonly key: BayKey;
  readonly id: string;
  readonly lifts: boolean;
  readonly capacityKg: number | null;
  free: number;
  /** Kept for a story; ordinary visits go elsewhere. */
  kept: boolean;
}

export const minute = 60_000;
const hour = 60 * minute;
/** How often somebody who waits looks again. */
const lookAgain = 6 * minute;

export interface FloorParts {
  readonly ledger: Ledger;
  readonly chance: Chance;
  /** The day that is under way, in the zone of the shop, `YYYY-MM-DD`; a working day. */
  readonly today: string;
  readonly people: ReadonlyMap<PersonKey, Sender>;
  readonly bays: readonly FloorBay[];
  readonly suppliers: ReadonlyMap<SupplierKey, string>;
  readonly saltSeasonId: string;
}

export class Floor {
  now = 0;
  readonly chance: Chance;
  readonly calendar: Calendar;
  private readonly working: readonly Interval[];
  private readonly agenda: { at: number; readonly script: Script }[] = [];
  private readonly busy = new Set<Technician>();
  private orders = 4100;

  constructor(readonly parts: FloorParts) {
    this.chance = parts.chance;
    this.calendar = parts.ledger.calendar;
    const [from, to] = [this.at(addDays(parts.today, -130), '00:00'), this.at(addDays(parts.today, 40), '00:00')];
    this.working = subtract(this.calendar.openIntervals(from, to), this.calendar.breakIntervals(from, to));
  }

  /** Acts out all scripts in the order of their times, up to `until`. What would go on later is left as it stands. */
  run(until: number): void {
    for (;;) {
      const [next] = this.agenda.sort((a, b) => a.at - b.at);
      if (next === undefined || next.at > until) return;
      this.now = Math.max(this.now, next.at);
      const step = next.script.next();
      if (step.done === true) this.agenda.splice(this.agenda.indexOf(next), 1);
      else next.at = Math.max(step.value, this.now);
    }
  }

  begin(at: number, script: Script): void {
    this.agenda.push({ at, script });
  }

  send<N extends CommandName>(by: PersonKey, name: N, input: CommandInputs[N]): (table: string) => string {
    const created = this.parts.ledger.send(this.person(by), name, input, this.now);
    return (table) => {
      const id = created[table];
      if (id === undefined) throw new Error(`${name} made no ${table}`);
      return id;
    };
  }

  person(key: PersonKey): Sender {
    const person = this.parts.people.get(key);
    if (!person) throw new Error(`nobody is ${key}`);
    return person;
  }

  /** Whether a clock of this person runs on a vehicle that is at hand. */
  isClocked(key: PersonKey): boolean {
    const { personId } = this.person(key);
    const { atHand } = this.parts.ledger;
    return atHand.list('clock', (clock) => clock.personId === personId && clock.toAt === null).length > 0;
  }

  supplier(key: SupplierKey): string {
    return this.parts.suppliers.get(key) ?? '';
  }

  bay(key: BayKey): FloorBay {
    const bay = this.parts.bays.find((one) => one.key === key);
    if (!bay) throw new Error(`no bay is ${key}`);
    return bay;
  }

  /** A reference that a supplier would print. */
  orderReference(): string {
    this.orders += 1;
    return `KQ-${this.orders}`;
  }

  at(day: string, time: string): number {
    return this.calendar.instantOf(day, time);
  }

  /** The working day so many before (negative) or after today. */
  day(offset: number): string {
    return this.calendar.nextWorkingDay(this.parts.today, offset) ?? this.parts.today;
  }

  /** That wall-clock time on the working day, some seconds later as people are. */
  on(offset: number, time: string): number {
    return this.at(this.day(offset), time) + this.seconds();
  }

  /** In so many minutes, give or take seconds. */
  later(least: number, most = least): number {
    return this.now + this.chance.between(least, most) * minute + this.seconds();
  }

  private seconds(): number {
    return this.chance.below(50_000);
  }

  /** The stretch of working time (open, no break) that now lies in, or the next one. */
  stretch(): Interval {
    const found = this.working[firstEndingAfter(this.working, this.now)];
    if (!found) throw new Error('the demo ran out of days');
    return found;
  }

  /** Waits until people are at work. */
  *untilWorking(): Script {
    const { from } = this.stretch();
    if (from > this.now) yield from + this.chance.between(1, 5) * minute + this.seconds();
  }

  /** Waits for open time in which the desk is there, breaks or not. */
  *untilOpen(): Script {
    const next = this.calendar.nextOpen(this.now);
    if (next !== null && next > this.now) yield next + this.chance.between(3, 20) * minute + this.seconds();
  }

  release(who: Technician): void {
    this.busy.delete(who);
  }

  /** Waits for one of these technicians, and takes them. */
  *someone(who: readonly Technician[] = technicians): Script<Technician> {
    for (;;) {
      yield* this.untilWorking();
      const free = who.filter((one) => !this.busy.has(one));
      if (free.length > 0) {
        const one = this.chance.of(free);
        this.busy.add(one);
        return one;
      }
      yield this.now + lookAgain;
    }
  }

  /** Waits for this technician and this bay, kept or not, and takes both. */
  *both(who: Technician, bay: FloorBay): Script {
    yield* this.untilWorking();
    while (this.busy.has(who) || bay.free === 0) yield this.now + minute;
    this.busy.add(who);
    bay.free -= 1;
  }

  /** Waits for a technician and a bay at once, and takes both: nobody stands about holding one of them. */
  *someoneAndBay(
    fits: (bay: FloorBay) => boolean,
    who: readonly Technician[] = technicians,
  ): Script<[Technician, FloorBay]> {
    for (;;) {
      yield* this.untilWorking();
      const free = who.filter((one) => !this.busy.has(one));
      const bay = this.parts.bays.find((one) => one.free > 0 && !one.kept && fits(one));
      const late = this.stretch().to - this.now < hour / 3;
      if (free.length > 0 && bay && !late) {
        const one = this.chance.of(free);
        this.busy.add(one);
        bay.free -= 1;
        return [one, bay];
      }
      yield this.now + lookAgain;
    }
  }
}
