/** One visit of one vehicle, in the words of the people who handle it: each method is one or a few commands. */
import type { CommandInputs } from '@holdfast/domain';
import type { PersonKey, Technician } from './cast.js';
import { partyOf, remember, standingWithEnough, whoAgrees } from './customer-file.js';
import { type FloorBay, minute, type Script } from './floor.js';
import { tryIt } from './road-test.js';
import { tellThatItIsReady } from './telephone.js';
import { VisitParts } from './visit-parts.js';

type CheckInExtra = Partial<
  Pick<
    CommandInputs['checkIn'],
    | 'promisedAt'
    | 'waitsHere'
    | 'boardNote'
    | 'keyTag'
    | 'yardSpot'
    | 'kind'
    | 'comebackOfLineId'
    | 'rolls'
    | 'mayBeDriven'
  >
>;
type LineExtra = Partial<Omit<CommandInputs['addLine'], 'jobId' | 'title'>>;
type FixFacts = Omit<CommandInputs['addTemporaryFix'], 'jobId' | 'temporaryFixId' | 'followUpId'>;

export class Visit extends VisitParts {
  readonly concerns: { readonly id: string; readonly conditions: string | null }[] = [];
  /** A concern showed itself to somebody here, so it is tried once more before it counts as gone. */
  showed = false;
  /** Null while it stands in the yard. */
  bay: FloorBay | null = null;

  get vehicleId(): string {
    return this.vehicle.id ?? '';
  }

  checkIn(concerns: readonly { words: string; conditions?: string }[], extra: CheckInExtra = {}): void {
    const { floor, vehicle } = this;
    vehicle.odometer += floor.chance.between(400, 2_500);
    if (vehicle.id === null) {
      const { plate, kind } = vehicle;
      vehicle.id = floor.send('desk', 'addVehicle', { plate, ...kind })('vehicle');
    }
    const before = floor.parts.ledger.changes.length;
    const created = floor.send('desk', 'checkIn', {
      vehicleId: vehicle.id,
      ...partyOf(floor, vehicle.customer),
      concerns: [...concerns],
      odometer: { value: vehicle.odometer, unit: 'km', source: 'read' },
      keyTag: String(1 + (floor.parts.ledger.changes.length % 60)),
      yardSpot: `Y${floor.chance.between(1, 14)}`,
      ...extra,
    });
    this.jobId = created('job');
    this.vehicle.isHere = true;
    for (const { table, after } of floor.parts.ledger.changes[before]?.edits ?? []) {
      if (table === 'concern')
        this.concerns.push({ id: after.id, conditions: (after as { conditions?: string | null }).conditions ?? null });
    }
    remember(floor, vehicle.customer, created);
  }

  line(title: string, extra: LineExtra = {}, by: PersonKey = 'manager'): string {
    return this.floor.send(by, 'addLine', { jobId: this.jobId, title, ...extra })('workLine');
  }

  /** Whether the line can rest on what its customer agreed to beforehand. */
  restsOn(lineId: string): string | null {
    const { floor, vehicle, jobId } = this;
    return standingWithEnough(floor, vehicle.customer, jobId, this.priceOf(lineId));
  }

  priceOf(lineId: string): string | null {
    return this.floor.parts.ledger.atHand.get('workLine', lineId).price;
  }

  /** A yes rests on a standing go-ahead where one has enough left; else somebody says it who may. */
  answer(
    lineId: string,
    answer: 'given' | 'deferred' | 'declined' = 'given',
    how: 'there' | 'telephone' | 'message' = 'telephone',
  ): void {
    const { floor, vehicle } = this;
    const standingGoAheadId = answer === 'given' ? this.restsOn(lineId) : null;
    if (standingGoAheadId !== null) {
      floor.send('desk', 'recordGoAhead', { lineId, answer, how: 'standing', standingGoAheadId });
      return;
    }
    const byName = whoAgrees(vehicle.customer, this.priceOf(lineId));
    floor.send('desk', 'recordGoAhead', { lineId, answer, byName, how });
  }

  /** The shop pays for this one itself. */
  giveItself(lineId: string): void {
    this.floor.send('manager', 'recordGoAhead', { lineId, answer: 'given', how: 'shop' });
  }

  /** The bay was taken on the floor before, by `someoneAndBay` or by a story that keeps it. */
  toBay(by: PersonKey, bay: FloorBay): void {
    const { curbKg = null, grossKg = null } = this.vehicle.kind;
    const asked = bay.capacityKg !== null && (grossKg === null || grossKg > bay.capacityKg);
    const heavy = bay.capacityKg !== null && (curbKg ?? 0) > bay.capacityKg;
    if (heavy) throw new Error(`${this.vehicle.plate} is too heavy for ${bay.key}`);
    this.floor.send(by, 'takeIntoBay', {
      jobId: this.jobId,
      bayId: bay.id,
      movedHow: 'driven',
      ...(asked ? { loaded: false } : {}),
    });
    this.bay = bay;
  }

  toYard(by: PersonKey, yardSpot = `Y${this.floor.chance.between(1, 14)}`): void {
    this.floor.send(by, 'moveToYard', { jobId: this.jobId, yardSpot, movedHow: 'driven' });
    this.leaveBay();
  }

  private leaveBay(): void {
    if (this.bay) this.bay.free += 1;
    this.bay = null;
  }

  start(who: Technician, lineId: string, bench = false): string {
    return this.floor.send(who, 'startWork', bench ? { lineId, bench } : { lineId })('clock');
  }

  /** The technician, whom the floor has taken before, works so many minutes, with breaks and evenings between. */
  *work(who: Technician, lineId: string, minutes: number): Script {
    const { floor } = this;
    let left = minutes * minute;
    for (;;) {
      yield* floor.untilWorking();
      const clockId = this.start(who, lineId);
      const { to } = floor.stretch();
      const isLast = floor.now + left <= to + 12 * minute;
      const until = isLast ? floor.now + left : to + floor.chance.between(-150, 60) * 1_000;
      left -= until - floor.now;
      yield Math.max(until, floor.now + 1_000);
      const handover =
        !isLast && floor.chance.odds(0.3)
          ? {
              handover: floor.chance.of([
                'Bolts hand-tight only',
                'Tray of clips lies on the bench',
                'Undertray off, fasteners in the magnetic dish',
              ]),
            }
          : {};
      floor.send(who, 'stopWork', { clockId, ...handover });
      if (isLast) return;
    }
  }

  /** With words where nobody here was on its clock. */
  finish(who: PersonKey, lineId: string, words?: string): void {
    this.floor.send(who, 'finishLine', words === undefined ? { lineId } : { lineId, words });
  }

  hold(
    by: PersonKey,
    reason: CommandInputs['openHold']['reason'],
    extra: Partial<Omit<CommandInputs['openHold'], 'jobId' | 'reason'>> = {},
  ): string {
    return this.floor.send(by, 'openHold', { jobId: this.jobId, reason, ...extra })('hold');
  }

  endHold(by: PersonKey, holdId: string): void {
    this.floor.send(by, 'endHold', { holdId });
  }

  finding(by: PersonKey, facts: Omit<CommandInputs['addFinding'], 'jobId' | 'findingId'>): string {
    return this.floor.send(by, 'addFinding', { jobId: this.jobId, ...facts })('finding');
  }

  /** Behind all that was reported. */
  cause(by: PersonKey, words: string, certainty: CommandInputs['recordCause']['certainty']): string {
    const concernIds = this.concerns.map(({ id }) => id);
    return this.floor.send(by, 'recordCause', { jobId: this.jobId, concernIds, words, certainty })('cause');
  }

  caution(by: PersonKey, code: CommandInputs['addCaution']['code'], words?: string): string {
    return this.floor.send(by, 'addCaution', {
      vehicleId: this.vehicleId,
      standing: false,
      code,
      ...(words === undefined ? {} : { words }),
    })('caution');
  }

  /** A temporary fix with its permanent repair as a follow-up; gives both ids. */
  fix(
    by: Technician,
    facts: FixFacts,
    followUp: Partial<CommandInputs['addFollowUp']> = {},
  ): { readonly fixId: string; readonly followUpId: string } {
    const { floor, vehicleId, jobId } = this;
    const fixId = floor.send(by, 'addTemporaryFix', { jobId, ...facts })('temporaryFix');
    const { beforeDay, seasonId, withinDistance } = facts;
    const limits = {
      ...(beforeDay === undefined ? {} : { beforeDay }),
      ...(seasonId === undefined ? {} : { seasonId }),
      ...(withinDistance === undefined ? {} : { withinDistance }),
    };
    const followUpId = floor.send('manager', 'addFollowUp', {
      vehicleId,
      jobId,
      kind: 'permanentRepair',
      title: facts.endedByWhat,
      temporaryFixId: fixId,
      ...limits,
      ...followUp,
    })('followUp');
    return { fixId, followUpId };
  }

  secondCheck(by: Technician, temporaryFixId: string, words: string): void {
    this.floor.send(by, 'recordSecondCheck', { temporaryFixId, words });
  }

  /** What became of every concern; ready, somebody rings; and the keys go back. */
  *leave(outcome: 'gone' | 'couldNotAppear' | 'stillThere' = 'gone'): Script {
    const { floor } = this;
    yield* floor.untilOpen();
    if (this.showed || outcome === 'couldNotAppear') tryIt(this, 'desk', { appeared: false });
    for (const { id, conditions } of this.concerns) {
      floor.send('desk', 'recordConcernOutcome', {
        concernId: id,
        outcome,
        conditions: conditions ?? 'Test drive on the quay road',
      });
    }
    yield* tellThatItIsReady(this);
    yield floor.later(8, 75);
    yield* floor.untilOpen();
    this.keysBack();
  }

  keysBack(): void {
    const { floor, vehicle } = this;
    vehicle.odometer += floor.chance.between(1, 9);
    floor.send('desk', 'handBack', {
      jobId: this.jobId,
      leavesBy: 'road',
      receivedBy: vehicle.customer.contact.name,
      receivedHow: floor.chance.odds(0.85) ? 'there' : 'telephone',
      odometer: vehicle.odometer,
    });
    this.leaveBay();
    vehicle.isHere = false;
    vehicle.lastHere = floor.now;
  }
}
