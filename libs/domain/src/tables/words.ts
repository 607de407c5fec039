/** Closed lists of words of the trade, as the rows, the wire and the screens use them. Labels stand in the catalogues. */
export const roles = ['owner', 'manager', 'desk', 'technician', 'partsClerk', 'wallScreen'] as const;
export type Role = (typeof roles)[number];

export const vehicleKinds = ['light', 'heavy', 'trailer', 'motorcycle'] as const;
export const drives = ['combustion', 'hybrid', 'electric', 'gas', 'none'] as const;
export const massSources = ['plate', 'papers', 'weighed', 'maker', 'told'] as const;
export const jobKinds = ['normal', 'comeback', 'guarantee', 'internal'] as const;
export const jobEnds = ['handedBack', 'released', 'cancelled'] as const;
export const readingSources = ['read', 'told', 'notReadable'] as const;
export const distanceUnits = ['km', 'mi'] as const;

export const cautionCodes = [
  'liftingPoint',
  'electricDrive',
  'gasTank',
  'highVoltageLive',
  'highVoltageDead',
  'airbagUnplugged',
  'fuelOpen',
  'brakesOpen',
  'noOil',
  'wheelsNotTorqued',
  'batteryOff',
  'onStands',
  'hotWork',
  'pitOpen',
  'doNotStart',
  'doNotMove',
  'other',
] as const;
export type CautionCode = (typeof cautionCodes)[number];

export const concernOutcomes = ['gone', 'stillThere', 'couldNotAppear', 'notTried'] as const;
/** What the customer agreed to before anybody knew what it would be, up to an amount. */
export const standingKinds = ['lookForFault', 'smallThings', 'fleetLimit'] as const;
export const certainties = ['found', 'likely', 'notFound'] as const;
export const torqueUnits = ['newtonMetre', 'poundFoot'] as const;
export const torqueSources = ['vehicleMaker', 'wheelMaker', 'partMaker', 'other'] as const;
/** Axle from the front and side, of twins inner or outer: `1L`, `2RO`; the spare. */
export const wheelPosition = /^(spare|[1-9][LR][IO]?)$/;
export const findingKinds = ['fault', 'wear', 'toWatch', 'nothingFound', 'couldNotBeChecked'] as const;
export const lineProgress = ['planned', 'started', 'stopped', 'done', 'carriedOver', 'dropped'] as const;
export type LineProgress = (typeof lineProgress)[number];
export const goAheadAnswers = ['withCustomer', 'given', 'deferred', 'declined'] as const;
export type GoAheadAnswer = (typeof goAheadAnswers)[number];
export const goAheadWays = ['there', 'telephone', 'message', 'standing', 'shop'] as const;
export const payers = ['customer', 'guarantee', 'insurer', 'shop', 'supplier'] as const;
export const skills = ['highVoltage', 'refrigerant', 'airbags', 'secondCheck'] as const;
/** Skills that the owner alone can lend by naming a qualified person: rule 5. */
export const guardedSkills: readonly string[] = ['highVoltage', 'refrigerant'];

export const placeKinds = ['yard', 'bay', 'roadTest', 'away'] as const;
export const spotUses = ['stands', 'kept'] as const;
export const movedWays = ['rolled', 'driven', 'dollies', 'towed'] as const;
export const subletForms = ['vehicleOut', 'componentOut', 'outsiderIn'] as const;
export const subletStates = ['arranged', 'underWay', 'ended', 'cancelled'] as const;
export const equipmentKinds = [
  'flat',
  'twoPostLift',
  'fourPostLift',
  'scissorLift',
  'alignmentRack',
  'pit',
  'jackAndStands',
] as const;
export const massUnits = ['kg', 'lb'] as const;
export const attendanceKinds = ['present', 'break', 'shopTime'] as const;
/** Replaced by another version, added where it was missing, ended afterwards, or struck. */
export const correctionKinds = ['replaced', 'added', 'ended', 'struck'] as const;
export const correctedTables = [
  'clock',
  'place',
  'hold',
  'attendance',
  'finding',
  'attempt',
  'odometerReading',
  'contactEntry',
  'photo',
  'caution',
] as const;
/** What a file brings; `checking` and `checked` under the columns that somebody named. */
export const importKinds = ['customers', 'vehicles', 'followUps'] as const;
export type ImportKind = (typeof importKinds)[number];
export const importStates = ['staged', 'checking', 'checked', 'accepted', 'discarded'] as const;
export const inspectionOutcomes = ['passed', 'failed'] as const;

export const holdReasons = [
  'parts',
  'goAhead',
  'sublet',
  'information',
  'tool',
  'bay',
  'technician',
  'setting',
  'conditions',
  'assessor',
  'collection',
  'other',
] as const;
export type HoldReason = (typeof holdReasons)[number];
export const holdEnds = [
  'byHand',
  'partsHere',
  'partsNoLongerNeeded',
  'lineEnded',
  'handedBack',
  'goAheadAnswered',
] as const;

export const neededTimes = ['beforeStart', 'beforeRefit', 'mayFollow'] as const;
export const partSources = ['supplier', 'stock', 'customersOwn', 'otherJob'] as const;
export const partStates = ['wanted', 'ordered', 'partArrived', 'arrived', 'fitted', 'cancelled'] as const;
export type PartState = (typeof partStates)[number];
export const supplierStates = [
  'inStock',
  'toOrder',
  'backorderedWithDate',
  'backorderedNoDate',
  'specialOrder',
] as const;
export const verdicts = ['good', 'accepted', 'damaged', 'wrong'] as const;

export const fixKinds = ['standIn', 'heldBy', 'leftOff', 'leftOpen', 'leftAsFound'] as const;
export const tier1Systems = [
  'brakes',
  'steering',
  'restraints',
  'fuel',
  'highVoltage',
  'wheelsTyres',
  'structure',
] as const;
export const tier2Systems = [
  'suspension',
  'lighting',
  'driverAssistance',
  'latches',
  'glass',
  'exhaust',
  'towing',
  'cooling',
  'mayDrop',
] as const;
export const otherSystems = ['body', 'trim', 'electrical', 'engine', 'transmission', 'comfort', 'other'] as const;
export const systems = [...tier1Systems, ...tier2Systems, ...otherSystems] as const;
export type System = (typeof systems)[number];
export const fixStates = ['on', 'failed', 'removed', 'ended'] as const;
export const fixEnds = ['repaired', 'mendedElsewhere', 'vehicleGone', 'ownerRefuses'] as const;
export const toldWays = ['told', 'seen', 'signed'] as const;

export const followUpKinds = [
  'permanentRepair',
  'carriedOver',
  'deferred',
  'lookAgain',
  'question',
  'service',
  'retorque',
] as const;
export const urgencies = ['urgent', 'soon', 'whenItSuits'] as const;
export const followUpStates = ['open', 'done', 'dropped'] as const;
export const leavesBy = ['road', 'transporter'] as const;
export const reportStates = ['settled', 'contested', 'dismissed'] as const;
export const reportKinds = [
  'takeIntoBay',
  'moveToYard',
  'startWork',
  'stopWork',
  'takeOnRoadTest',
  'returnFromRoadTest',
  'sendAway',
  'bringBack',
] as const;
export const callReasons = ['goAhead', 'ready', 'partsIn', 'other'] as const;
export const callEnds = ['logged', 'noLongerNeeded'] as const;
export const contactWays = ['telephone', 'message', 'letter', 'there'] as const;
/** Whose move it is after a contact. */
export const movesOf = ['shop', 'customer', 'supplier', 'nobody'] as const;

/** Tier of a system: 1 and 2 as rule 7 lists them, 3 for all others. */
export function tierOf(system: System): 1 | 2 | 3 {
  if ((tier1Systems as readonly string[]).includes(system)) return 1;
  return (tier2Systems as readonly string[]).includes(system) ? 2 : 3;
}
