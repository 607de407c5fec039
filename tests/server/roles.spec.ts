import { commandNames, commands, mayDo } from '@holdfast/contract';
import { type CommandInputs, type CommandName, roles } from '@holdfast/domain';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop } from '../kit/engine-shop.js';

// The table of who may do what is read from the design once more here, by hand, so that a slip in the code's own table
// shows: O owner, M manager, D desk, T technician, P parts clerk. The wall screen does nothing.
const byHand: Readonly<Record<CommandName, string>> = {
  addCustomer: 'OMD',
  changeCustomer: 'OMD',
  addContact: 'OMD',
  changeContact: 'OMD',
  giveStandingGoAhead: 'OMD',
  endStandingGoAhead: 'OMD',
  recordContact: 'OMDTP',
  bookJob: 'OMD',
  changeBooking: 'OMD',
  recordArrival: 'OMD',
  cancelJob: 'OMD',
  correctVehicle: 'OMD',
  recordOdometer: 'OMDT',
  setBoardNote: 'OMDTP',
  releaseUnfinished: 'OM',
  undoHandBack: 'OMD',
  changeLine: 'OMT',
  makeChoice: 'OMT',
  withdrawGoAhead: 'OMDTP',
  reopenLine: 'OMT',
  recordAttempt: 'OMDT',
  recordCause: 'OMT',
  changeCause: 'OMT',
  recordWheelOff: 'OMT',
  recordWheelOn: 'OMT',
  recordTorque: 'OMT',
  recordRetorque: 'OMT',
  swapBays: 'OMT',
  takeOnRoadTest: 'OMT',
  returnFromRoadTest: 'OMT',
  arrangeSublet: 'OMD',
  changeSublet: 'OMD',
  cancelSublet: 'OMD',
  sendAway: 'OMD',
  sendComponentAway: 'OMD',
  letOutsiderIn: 'OMD',
  bringBack: 'OMD',
  changeHold: 'OMDTP',
  askQuestion: 'OMDTP',
  answerQuestion: 'OMDTP',
  clearFlag: 'OM',
  addVehicle: 'OMD',
  checkIn: 'OMD',
  changePromisedTime: 'OMD',
  recordConcernOutcome: 'OMDT',
  addCaution: 'OMDTP',
  endCaution: 'OMDTP',
  addFinding: 'OMT',
  attachPhoto: 'OMDT',
  handBack: 'OMD',
  addLine: 'OMT',
  recordGoAhead: 'OMDTP',
  startWork: 'OMT',
  stopWork: 'OMT',
  finishLine: 'OMT',
  carryOverLine: 'OMT',
  dropLine: 'OMT',
  takeIntoBay: 'OMT',
  moveToYard: 'OMT',
  recordRolls: 'OMT',
  openHold: 'OMDTP',
  endHold: 'OMDTP',
  wantPart: 'OMDTP',
  placeOrder: 'OMP',
  recordDueIn: 'OMP',
  receiveParts: 'OMP',
  fitPart: 'OMT',
  cancelPart: 'OMP',
  addTemporaryFix: 'OMT',
  recordSecondCheck: 'OMT',
  endTemporaryFix: 'OMT',
  addFollowUp: 'OMDT',
  closeFollowUp: 'OMDT',
  takeBack: 'OMDTP',
  settleCard: 'OMT',
  setUpShop: '',
  addPerson: 'O',
  changePerson: 'O',
  addBay: 'OM',
  changeBay: 'OM',
  setOpeningHours: 'OM',
  setSeasons: 'OM',
  addSupplier: 'OMP',
  changeSupplier: 'OMP',
  changeShop: 'O',
  changeSettings: 'O',
  setException: 'OM',
  endException: 'OM',
  recordLiftInspection: 'OM',
  allowOverdueLift: 'OM',
  takeOutOfUse: 'OMT',
  putBackInUse: 'OM',
  nameLiftingPoints: 'OM',
  changeOwner: 'OMD',
  mergeVehicles: 'OM',
  mergeCustomers: 'OM',
  erasePersonalData: 'O',
  recordAttendance: 'OMDTP',
  addAttendance: 'OMDTP',
  correctAttendance: 'OMDTP',
  addClock: 'OMT',
  correctClock: 'OMDTP',
  addStay: 'OM',
  correctStay: 'OM',
  correctHold: 'OMDTP',
  closeMonth: 'OM',
  reopenMonth: 'O',
  strikeEntry: 'OM',
  acceptImport: 'OM',
};
const letter = { owner: 'O', manager: 'M', desk: 'D', technician: 'T', partsClerk: 'P', wallScreen: 'W' } as const;

describe('every role against every command', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
  });
  afterAll(() => db.drop());

  it('has a line for each command', () => {
    expect(Object.keys(byHand).sort()).toEqual([...commandNames].sort());
    expect(Object.keys(mayDo).sort()).toEqual([...commandNames].sort());
  });

  // Ids of nothing: whoever may is told that the row is not there (or what the rule says), whoever may not is told so first.
  const inputOfNothing = (name: CommandName): CommandInputs[CommandName] => {
    const nothing = randomUUID();
    const ids = Object.fromEntries(
      [
        'jobId',
        'vehicleId',
        'lineId',
        'clockId',
        'bayId',
        'holdId',
        'partLineId',
        'concernId',
        'cautionId',
        'temporaryFixId',
        'followUpId',
        'reportId',
        'personId',
        'supplierId',
        'customerId',
        'contactId',
        'standingGoAheadId',
        'causeId',
        'subletId',
        'questionId',
        'flagId',
        'shopId',
        'importId',
        'exceptionId',
        'outageId',
        'otherId',
        'id',
        'placeId',
        'attendanceId',
        'toId',
      ].map((field) => [field, nothing]),
    );
    return {
      ...ids,
      partLineIds: [nothing],
      lines: [],
      items: [],
      concerns: [],
      concernIds: [nothing],
      lineIds: [nothing, randomUUID()],
      jobIds: [nothing, randomUUID()],
      positions: ['1L'],
      seasons: [],
      roles: [],
      equipment: [],
      name: 'N',
      words: 'w',
      seq: 1_000_000,
      plate: 'HB 1',
      description: 'Van',
      kind: 'light',
      drive: 'combustion',
      week: noHours,
      breaks: noHours,
      validFrom: '2026-01-01',
      day: '2026-01-01',
      hours: [],
      inspectedOn: '2026-01-01',
      outcome: 'passed',
      untilDay: '2026-01-01',
      otherVersion: 1,
      table: 'clock',
      month: '2026-01',
      fromAt: 0,
      toAt: 1,
      row: commands[name].row,
    } as unknown as CommandInputs[CommandName];
  };
  const noHours = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };

  it.each(commandNames.flatMap((name) => roles.map((role) => [name, role] as const)))(
    '%s as %s',
    async (name, role) => {
      const before = await headOf(shop.shopId);
      const sender = shop.sender(shop.ownerId, [role]);
      const sent = { name, input: inputOfNothing(name), key: randomUUID(), fingerprint: 'x', sentAt: null };
      const allowed = byHand[name].includes(letter[role]);
      const answer = await shop.run(sender, sent).catch((failure: unknown) => failure);
      const codes =
        answer instanceof Error || (answer as { kind: string }).kind !== 'refused'
          ? []
          : (answer as { refusals: { code: string }[] }).refusals.map((r) => r.code);
      if (allowed) expect(codes).not.toContain('role.mayNot');
      else {
        expect(codes).toEqual(['role.mayNot']);
        expect(await headOf(shop.shopId)).toBe(before);
      }
    },
  );

  async function headOf(shopId: string): Promise<number> {
    const { rows } = await db.superuser.query<{ seq: number }>('select seq from head where shop_id = $1', [shopId]);
    return rows[0]?.seq ?? -1;
  }
});
