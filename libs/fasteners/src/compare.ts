/**
 * A temporary fixing beside the original: what fits, how much it bears, what is not known. The answer is a list of single
 * checks and never says that anything will hold; where a check lacks a fact, that is the answer.
 */
import { type FixingCheck, type OriginalFixing, type TemporaryFixing, check } from './fixing.js';
import { boltChecks, insertChecks } from './threaded-checks.js';
import { type MarkedBolt, type StrengthMark, loadsOf } from './strength.js';
import { sameThread } from './thread.js';
import { type TorqueAdvice, torqueAdvice } from './torque.js';

export interface LoadRatio {
  /** temporary divided by original */
  readonly ratio: number;
  readonly originalN: number;
  readonly temporaryN: number;
  /** proof loads of two bolts; a maker's rating against what the original bears; or an equal share over the fixings left */
  readonly basis: 'proofLoads' | 'makersRating' | 'equalShare';
  /** true where an unmarked bolt was counted as the lowest class on either side */
  readonly assumedLowest: boolean;
}

export interface FixingComparison {
  readonly checks: readonly FixingCheck[];
  /** `fallsShort` before `notKnown` before `holds`: of the checks together */
  readonly worst: FixingCheck['outcome'];
  readonly loadRatio: LoadRatio | null;
  readonly torque: TorqueAdvice;
}

const loadOf = (bolt: MarkedBolt) => loadsOf(bolt).loads;

interface Borne {
  readonly newtons: number;
  readonly basis: LoadRatio['basis'];
  readonly assumedLowest: boolean;
}

function borneByOriginal(original: OriginalFixing): Borne | null {
  const loads = original.bolt === null ? null : loadOf(original.bolt);
  if (loads !== null) {
    return { newtons: loads.proofN, basis: 'proofLoads', assumedLowest: loads.strength.assumedLowest };
  }
  return original.ratedN === null ? null : { newtons: original.ratedN, basis: 'makersRating', assumedLowest: false };
}

function borneByTemporary(temporary: Exclude<TemporaryFixing, { readonly kind: 'leftEmpty' }>): Borne | null {
  if (temporary.kind === 'threadInsert') return null;
  if (temporary.kind === 'sameThread' || temporary.kind === 'throughBolt') {
    const loads = loadOf({ ...temporary.bolt, lengthMm: temporary.lengthMm });
    if (loads === null) return null;
    return { newtons: loads.proofN, basis: 'proofLoads', assumedLowest: loads.strength.assumedLowest };
  }
  return temporary.ratedN === null ? null : { newtons: temporary.ratedN, basis: 'makersRating', assumedLowest: false };
}

function loadRatioOf(original: OriginalFixing, temporary: TemporaryFixing): LoadRatio | null {
  const before = borneByOriginal(original);
  if (before === null) return null;
  if (temporary.kind === 'leftEmpty') {
    const left = temporary.holes - temporary.empty;
    return {
      ratio: left / temporary.holes,
      originalN: before.newtons * temporary.holes,
      temporaryN: before.newtons * left,
      basis: 'equalShare',
      assumedLowest: before.assumedLowest,
    };
  }
  const now = borneByTemporary(temporary);
  if (now === null) return null;
  return {
    ratio: now.newtons / before.newtons,
    originalN: before.newtons,
    temporaryN: now.newtons,
    basis: now.basis === 'proofLoads' ? before.basis : now.basis,
    assumedLowest: before.assumedLowest || now.assumedLowest,
  };
}

function heldWithoutThreadChecks(
  original: OriginalFixing,
  temporary: Extract<TemporaryFixing, { readonly ratedN: number | null }>,
): FixingCheck[] {
  const checks: FixingCheck[] = [];
  if (temporary.ratedN === null) checks.push(check('strength', 'notKnown', 'noRating'));
  if (temporary.upToC === null || original.temperatureC === null)
    checks.push(check('heat', 'notKnown', 'heatNotKnown'));
  else {
    const holds = original.temperatureC <= temporary.upToC;
    const facts = { upToC: temporary.upToC, placeC: original.temperatureC };
    checks.push(
      check('heat', holds ? 'holds' : 'fallsShort', holds ? 'withinHeat' : 'tooHot', facts, "its maker's sheet"),
    );
  }
  if (original.partsMove === null) checks.push(check('movement', 'notKnown', 'movementNotKnown'));
  else if (!original.partsMove) checks.push(check('movement', 'holds', 'partsDoNotMove'));
  else checks.push(check('movement', 'fallsShort', 'partsMove', {}, 'common practice'));
  return checks;
}

function leftEmptyChecks(temporary: Extract<TemporaryFixing, { readonly kind: 'leftEmpty' }>): FixingCheck[] {
  const { empty, holes } = temporary;
  const whole = Number.isInteger(empty) && Number.isInteger(holes) && holes > 0 && empty > 0 && empty <= holes;
  if (!whole) throw new RangeError(`${empty} of ${holes} fixings cannot be missing.`);
  if (empty === holes) return [check('neighbours', 'fallsShort', 'noneLeft', { empty, holes })];
  const facts = { empty, holes, loadOnEachTimes: holes / (holes - empty) };
  return [
    check('neighbours', 'fallsShort', 'restBearsMore', facts, 'equal share: the load over the fixings that are left'),
    check('neighbours', 'notKnown', 'shareNotEqual', {}),
  ];
}

function singleUseCheck(original: OriginalFixing): FixingCheck {
  if (original.singleUse === null) return check('singleUse', 'notKnown', 'askWhetherSingleUse');
  return original.singleUse
    ? check('singleUse', 'fallsShort', 'originalNotFittedAgain', {}, "the vehicle maker's instructions")
    : check('singleUse', 'holds', 'originalMayBeFittedAgain');
}

/** The maker's figure belongs to the original bolt. It passes to another only if that is no weaker in the same thread. */
function torqueOf(
  original: OriginalFixing,
  temporary: TemporaryFixing,
): { readonly torque: TorqueAdvice; readonly note: FixingCheck | null } {
  const joint = { place: original.place, into: original.into, surface: original.surface };
  const figure = original.makersFigure;
  if (temporary.kind === 'threadInsert' && original.bolt !== null) {
    const advice = torqueAdvice({ ...joint, into: null, bolt: original.bolt, makersFigure: figure });
    return { torque: advice, note: check('torque', 'notKnown', 'askMakerOfInsert') };
  }
  if (temporary.kind !== 'sameThread' && temporary.kind !== 'throughBolt') {
    return { torque: { kind: 'none', reasons: [] }, note: null };
  }
  const bolt = { ...temporary.bolt, lengthMm: temporary.lengthMm };
  // A nut behind plastic or thin sheet crushes it as well, so those keep their rule.
  const into = temporary.kind === 'throughBolt' && original.into === 'tappedMetal' ? 'nut' : original.into;
  const passes =
    figure !== null &&
    temporary.kind === 'sameThread' &&
    original.bolt !== null &&
    sameThread(bolt.thread, original.bolt.thread) &&
    noWeaker(bolt, original.bolt);
  return {
    torque: torqueAdvice({ ...joint, into, bolt, makersFigure: passes ? figure : null }),
    note: figure !== null && !passes ? check('torque', 'notKnown', 'makersFigureIsForOriginal') : null,
  };
}

function noWeaker(bolt: MarkedBolt, than: MarkedBolt): boolean {
  const [now, before] = [loadOf(bolt), loadOf(than)];
  return now !== null && before !== null && !before.strength.assumedLowest && now.proofN >= before.proofN;
}

/** Compares what stands in with what belongs there. RangeError: more holes empty than there are. */
export function compareFixings(original: OriginalFixing, temporary: TemporaryFixing): FixingComparison {
  const checks: FixingCheck[] = [];
  if (temporary.kind === 'leftEmpty') checks.push(...leftEmptyChecks(temporary));
  else if (temporary.kind === 'threadInsert') checks.push(...insertChecks(original, temporary));
  else if (temporary.kind === 'sameThread' || temporary.kind === 'throughBolt') {
    checks.push(...boltChecks(original, temporary));
  } else checks.push(...heldWithoutThreadChecks(original, temporary));
  const loadRatio = loadRatioOf(original, temporary);
  checks.push(strengthCheck(original, temporary, loadRatio), singleUseCheck(original));
  const { torque, note } = torqueOf(original, temporary);
  if (note !== null) checks.push(note);
  const outcomes = checks.map(({ outcome }) => outcome);
  const worst = outcomes.includes('fallsShort') ? 'fallsShort' : outcomes.includes('notKnown') ? 'notKnown' : 'holds';
  return { checks, worst, loadRatio, torque };
}

const markOf = (bolt: MarkedBolt | null): StrengthMark | 'unmarked' => bolt?.mark ?? 'unmarked';

const loadSources: Readonly<Record<LoadRatio['basis'], string>> = {
  proofLoads: 'ISO 898-1, SAE J429',
  makersRating: "its maker's sheet",
  equalShare: 'equal share: the load over the fixings that are left',
};

function strengthCheck(original: OriginalFixing, temporary: TemporaryFixing, ratio: LoadRatio | null): FixingCheck {
  if (ratio === null) return check('strength', 'notKnown', 'loadNotKnown');
  const bolt = 'bolt' in temporary ? temporary.bolt : null;
  const facts = {
    ratio: ratio.ratio,
    originalN: ratio.originalN,
    temporaryN: ratio.temporaryN,
    basis: ratio.basis,
    original: markOf(original.bolt),
    temporary: markOf(bolt),
  };
  if (ratio.ratio < 1) return check('strength', 'fallsShort', 'bearsLess', facts, loadSources[ratio.basis]);
  // An original counted as the lowest class may have been stronger: the ratio then proves nothing.
  const originalUnread = original.bolt !== null && original.bolt.mark === null;
  if (originalUnread) return check('strength', 'notKnown', 'originalNotRead', facts);
  return check('strength', 'holds', 'bearsNoLess', facts, loadSources[ratio.basis]);
}
