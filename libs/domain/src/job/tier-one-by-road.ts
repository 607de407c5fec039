import type { HandBack } from '../inputs.js';
import type { By } from '../kernel/decision.js';
import type { Facts, Refusal } from '../kernel/refusal.js';
import type { RefusalCode } from '../kernel/refusal-codes.js';
import type { Rows } from '../kernel/rows.js';
import { isLead } from '../questions/people-and-shop.js';
import type { Row } from '../tables/tables.js';
import { tierOf } from '../tables/words.js';

type Allowance = NonNullable<HandBack['byRoad']>[number];

/** What the hand-back says about exactly this fix. */
export function allowanceFor(asked: Pick<HandBack, 'byRoad'>, temporaryFixId: string): Allowance | undefined {
  return asked.byRoad?.find((one) => one.temporaryFixId === temporaryFixId);
}

/** A second check by another person than the one who recorded the fix. */
function checkedByAnother(rows: Rows, fix: Row<'temporaryFix'>): boolean {
  const checks = rows.list('secondCheck', (one) => one.temporaryFixId === fix.id);
  return checks.some((check) => !check.samePerson && check.personId !== fix.byId);
}

function allowanceFaults(asked: Pick<HandBack, 'byRoad' | 'receivedHow'>, by: By, fixId: string): RefusalCode[] {
  const allowance = allowanceFor(asked, fixId);
  if (!allowance) return ['handBack.roadNotAllowed'];
  const faults: RefusalCode[] = [];
  if (!isLead(by)) faults.push('handBack.roadByLeadOnly');
  if (allowance.words.trim() === '') faults.push('handBack.roadWordsMissing');
  if (!allowance.receiverSigned) faults.push('handBack.receiverNotSigned');
  if (asked.receivedHow !== 'there') faults.push('handBack.receivedByTelephone');
  return faults;
}

/**
 * Rule 7, tier 1, by road: a second check by another person, and for exactly that fix the allowance of owner or manager
 * with words and the signature of the receiver, there and not by telephone. The same for one that failed or was removed;
 * as no new check can be made of it, only one that was checked before leaves by road, any other on a transporter.
 */
export function tierOneByRoadBlockers(
  rows: Rows,
  asked: Pick<HandBack, 'byRoad' | 'receivedHow'>,
  by: By,
  fixes: readonly Row<'temporaryFix'>[],
): Refusal[] {
  const tierOne = fixes.filter((fix) => tierOf(fix.system) === 1);
  const named = tierOne.flatMap((fix) => {
    const facts: Facts = { temporaryFixId: fix.id, place: fix.place, system: fix.system, tier: 1 };
    const way = { table: 'temporaryFix', id: fix.id };
    const unchecked: RefusalCode[] = checkedByAnother(rows, fix) ? [] : ['handBack.secondCheckMissing'];
    return [...unchecked, ...allowanceFaults(asked, by, fix.id)].map((code) => ({ code, facts, way }));
  });
  const others = (asked.byRoad ?? []).filter((one) => !tierOne.some((fix) => fix.id === one.temporaryFixId));
  return [
    ...named,
    ...others.map(({ temporaryFixId }) => ({ code: 'handBack.roadNotNeeded' as const, facts: { temporaryFixId } })),
  ];
}
