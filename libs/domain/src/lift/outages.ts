/** A bay, or one piece of its equipment, goes out of use and comes back. Vehicles that stand there stay where they are. */
import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { lastInspection, runningOutage } from '../questions/bay-use.js';
import { specOn, todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';

/** A fact, from when it was seen. What is out of use already is so once. */
export const takeOutOfUse: CommandRule<'takeOutOfUse'> = {
  needs: () => ({}),
  decide: (rows, { outageId, bayId, words, ...input }, at) => {
    const bay = live(rows, 'bay', bayId);
    if (!bay) return notThere('bay', bayId);
    if (rows.find('outage', outageId)) return refuse('lift.alreadyRecorded', { id: outageId ?? null });
    const equipment = input.equipment ?? null;
    const { equipment: there } = specOn(rows, bayId, todayOf(at));
    if (equipment !== null && !there.some(({ kind }) => kind === equipment)) {
      return refuse('outage.noSuchEquipment', { equipment }, { table: 'bay', id: bayId });
    }
    const out = runningOutage(rows, bayId, equipment);
    if (out) return refuse('outage.already', { outageId: out.id, equipment }, { table: 'outage', id: out.id });
    const id = outageId ?? at.newId();
    const when = { fromAt: at.effectiveAt, toAt: null, endWords: null };
    rows.add('outage', { id, ...recordedBy(at), bayId, equipment, words, ...when });
    return { facts: { bayId, equipment }, created: { outage: id } };
  },
};

/** A turn, by owner or manager. A lift whose last inspection failed stays out of use until one has passed. */
export const putBackInUse: CommandRule<'putBackInUse'> = {
  needs: () => ({}),
  decide: (rows, { outageId, words }, at) => {
    const outage = live(rows, 'outage', outageId);
    if (!outage) return notThere('outage', outageId);
    if (outage.toAt !== null) return refuse('outage.over', { outageId });
    const { bayId, equipment, fromAt } = outage;
    const spec = specOn(rows, bayId, todayOf(at));
    const isLift = spec.equipment.some(({ kind, grips }) => kind === equipment && grips !== null);
    const last = lastInspection(rows, spec);
    if (isLift && last?.outcome === 'failed') {
      return refuse('lift.failed', { inspectedOn: last.on }, { table: 'bay', id: bayId });
    }
    rows.change('outage', outageId, { toAt: Math.max(at.effectiveAt, fromAt), endWords: words ?? null });
    return { facts: { bayId, equipment } };
  },
};
