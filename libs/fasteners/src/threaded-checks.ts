/** What can be checked of a bolt in the place of another: thread, nut, engagement, bottoming, grip. */
import { engagementNeeded } from './engagement.js';
import { type FixingCheck, type Nut, type OriginalFixing, type TemporaryFixing, check } from './fixing.js';
import { pairNut } from './nuts.js';
import { type MarkedBolt, propertyClasses, strengthOf } from './strength.js';
import { type Thread, diameterMmOf, pitchMmOf, sameThread } from './thread.js';

type BoltedFixing = Extract<TemporaryFixing, { readonly bolt: MarkedBolt }>;

const pitchAssumed = (thread: Thread): boolean => thread.system === 'metric' && !thread.pitchSaid;

function threadCheck(original: OriginalFixing, thread: Thread): FixingCheck {
  if (original.bolt === null) return check('thread', 'notKnown', 'originalThreadNotKnown');
  const facts = {
    originalDiameterMm: diameterMmOf(original.bolt.thread),
    originalPitchMm: pitchMmOf(original.bolt.thread),
    diameterMm: diameterMmOf(thread),
    pitchMm: pitchMmOf(thread),
  };
  if (!sameThread(original.bolt.thread, thread))
    return check('thread', 'fallsShort', 'threadDiffers', facts, 'ISO 261');
  const assumed = pitchAssumed(thread) || pitchAssumed(original.bolt.thread);
  return assumed
    ? check('thread', 'notKnown', 'pitchAssumedCoarse', facts, 'ISO 262')
    : check('thread', 'holds', 'threadAgrees', facts);
}

function nutCheck(bolt: MarkedBolt, nut: Nut | null): FixingCheck {
  if (nut === null) return check('nut', 'notKnown', 'nutNotKnown');
  const found = strengthOf(bolt);
  const mark = propertyClasses.find((one) => one === found.strength?.mark);
  if (mark === undefined) return check('nut', 'notKnown', 'noPairingKnown', { nut: nut.nutClass });
  const pair = pairNut(mark, nut, diameterMmOf(bolt.thread));
  const facts = { bolt: mark, nut: nut.nutClass };
  return pair.pairs
    ? check('nut', 'holds', 'nutPairs', facts, 'ISO 898-2')
    : check('nut', 'fallsShort', pair.doubt, facts, 'ISO 898-2');
}

/** Engaged thread against the most demanding rule in print for the material. */
function engagementCheck(original: OriginalFixing, thread: Thread, engagedMm: number | null): FixingCheck {
  if (engagedMm === null || original.tappedMaterial === null) {
    return check('engagement', 'notKnown', 'engagementNotKnown');
  }
  const [strictest] = engagementNeeded(diameterMmOf(thread), original.tappedMaterial);
  if (strictest === undefined) return check('engagement', 'notKnown', 'noRuleForMaterial', { engagedMm });
  const facts = { engagedMm, neededMm: strictest.neededMm };
  return engagedMm >= strictest.neededMm
    ? check('engagement', 'holds', 'engagedEnough', facts, strictest.rule.source)
    : check('engagement', 'fallsShort', 'engagedTooLittle', facts, strictest.rule.source);
}

function tappedChecks(original: OriginalFixing, temporary: BoltedFixing): FixingCheck[] {
  const { gripMm, tappedDepthMm } = original;
  const reachMm = temporary.lengthMm === null || gripMm === null ? null : temporary.lengthMm - gripMm;
  const engagedMm = reachMm === null || tappedDepthMm === null ? null : Math.max(0, Math.min(reachMm, tappedDepthMm));
  const checks = [engagementCheck(original, temporary.bolt.thread, engagedMm)];
  if (reachMm === null || tappedDepthMm === null) checks.push(check('bottoming', 'notKnown', 'depthNotKnown'));
  else {
    const facts = { reachMm, tappedDepthMm };
    const bottoms = reachMm > tappedDepthMm;
    checks.push(check('bottoming', bottoms ? 'fallsShort' : 'holds', bottoms ? 'bottoms' : 'doesNotBottom', facts));
  }
  return checks;
}

/** Height of a regular nut as a share of the diameter, and one thread that has to show beyond it. Common practice. */
const nutHeightInDiameters = 0.9;

function gripChecks(original: OriginalFixing, temporary: BoltedFixing): FixingCheck[] {
  const { lengthMm, threadedMm, bolt } = temporary;
  const { gripMm } = original;
  if (lengthMm === null || gripMm === null) return [check('grip', 'notKnown', 'gripNotKnown')];
  const neededMm = gripMm + nutHeightInDiameters * diameterMmOf(bolt.thread) + pitchMmOf(bolt.thread);
  const facts = { lengthMm, gripMm, neededMm };
  if (lengthMm < neededMm) return [check('grip', 'fallsShort', 'tooShortForNut', facts, 'common practice')];
  if (threadedMm === null) return [check('grip', 'notKnown', 'threadedLengthNotKnown', facts)];
  const shankMm = lengthMm - threadedMm;
  return shankMm > gripMm
    ? [check('grip', 'fallsShort', 'shankLongerThanGrip', { ...facts, shankMm }, 'common practice')]
    : [check('grip', 'holds', 'lengthSuitsGrip', { ...facts, shankMm }, 'common practice')];
}

/** All checks of a bolt that stands in for the original one. */
export function boltChecks(original: OriginalFixing, temporary: BoltedFixing): FixingCheck[] {
  const checks = temporary.kind === 'sameThread' ? [threadCheck(original, temporary.bolt.thread)] : [];
  const found = strengthOf({ ...temporary.bolt, lengthMm: temporary.lengthMm });
  if (found.strength === null) checks.push(check('strength', 'fallsShort', found.doubt));
  else if (found.strength.assumedLowest) {
    checks.push(check('strength', 'notKnown', 'unmarkedCountsAsLowest', { mark: found.strength.mark }));
  }
  const nutBehind = temporary.kind === 'throughBolt' || original.into === 'nut';
  if (nutBehind) return [...checks, nutCheck(temporary.bolt, temporary.nut), ...gripChecks(original, temporary)];
  if (original.into === 'tappedMetal') return [...checks, ...tappedChecks(original, temporary)];
  return [
    ...checks,
    check('engagement', 'notKnown', original.into === null ? 'materialNotKnown' : 'noRuleForMaterial'),
  ];
}

/** A thread insert takes the original bolt; how hard it can be pulled out is its maker's to say. */
export function insertChecks(
  original: OriginalFixing,
  temporary: Extract<TemporaryFixing, { readonly kind: 'threadInsert' }>,
): FixingCheck[] {
  return [
    threadCheck(original, temporary.inside),
    engagementCheck(original, temporary.inside, temporary.engagedMm),
    check('strength', 'notKnown', 'pullOutNotKnown'),
  ];
}
