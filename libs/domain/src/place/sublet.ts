/** Work by another firm as it is arranged, said anew, or called off; and the hold that it is while it is under way. */
import type { ArrangeSublet, SubletFacts } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import { type Visit, visitOf } from '../questions/visit.js';
import { settledTables } from '../settle/settled-tables.js';
import type { Row } from '../tables/tables.js';
import type { subletForms } from '../tables/words.js';
import { standingTables } from './move-vehicle.js';

const subletTables = [...settledTables, ...standingTables, 'sublet'] as const;

export interface SubletOfVisit extends Visit {
  readonly sublet: Row<'sublet'>;
}

export function subletOf(rows: Rows, subletId: string): SubletOfVisit | Refused {
  const sublet = live(rows, 'sublet', subletId);
  if (!sublet) return notThere('sublet', subletId);
  const visit = visitOf(rows, sublet.jobId);
  return visit instanceof Refused ? visit : { ...visit, sublet };
}

/** The sublet that may begin now: arranged, of this form, on a visit that goes on. */
export function subletToBegin(
  rows: Rows,
  subletId: string,
  form: (typeof subletForms)[number],
): SubletOfVisit | Refused {
  const found = subletOf(rows, subletId);
  if (found instanceof Refused) return found;
  const { job, sublet } = found;
  if (job.endedAt !== null) return refuse('place.jobEnded', { jobNumber: job.number });
  if (sublet.form !== form) return refuse('sublet.otherForm', { form: sublet.form });
  return sublet.state === 'arranged' ? found : refuse('sublet.notArranged', { state: sublet.state });
}

function refusedArranging(rows: Rows, input: ArrangeSublet, { job }: Visit): Refused | null {
  const { subletId, lineId, supplierId, form, component } = input;
  if (subletId !== undefined && rows.find('sublet', subletId)) return refuse('sublet.alreadyThere', { subletId });
  if (job.endedAt !== null) return refuse('place.jobEnded', { jobNumber: job.number });
  const missing = absent(rows, { workLine: lineId, supplier: supplierId });
  if (missing) return missing;
  if (lineId !== undefined && rows.get('workLine', lineId).jobId !== job.id) {
    return refuse('sublet.lineOfOtherJob', { lineId });
  }
  return form === 'componentOut' && component === undefined ? refuse('sublet.componentMissing') : null;
}

/** A fact by the desk: nothing goes anywhere yet. */
export const arrangeSublet: CommandRule<'arrangeSublet'> = {
  needs: ({ jobId, lineId }) => ({
    jobs: [jobId],
    tables: ['sublet', 'workLine'],
    ...(lineId === undefined ? {} : { lines: [lineId] }),
  }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    const refused = refusedArranging(rows, input, visit);
    if (refused) return refused;
    const { job, vehicle } = visit;
    const { form, firm, lineId } = input;
    const sublet = rows.add('sublet', {
      id: input.subletId ?? at.newId(),
      ...recordedBy(at),
      jobId: job.id,
      vehicleId: vehicle.id,
      lineId: lineId ?? null,
      form,
      firm,
      ...factsSaid({}, input),
      state: 'arranged',
      fromAt: null,
      toAt: null,
      endWords: null,
    });
    return { facts: { jobId: job.id, subletId: sublet.id, form }, created: { sublet: sublet.id } };
  },
};

/** What is said replaces what was; money as a plain decimal in the shop's currency. */
function factsSaid(
  was: Partial<Row<'sublet'>>,
  { supplierId, component, slotAt, price, dueBackAt, words }: SubletFacts,
) {
  return {
    supplierId: supplierId ?? was.supplierId ?? null,
    component: component ?? was.component ?? null,
    slotAt: slotAt ?? was.slotAt ?? null,
    price: price === undefined ? (was.price ?? null) : canonical(price),
    dueBackAt: dueBackAt ?? was.dueBackAt ?? null,
    words: words ?? was.words ?? null,
  };
}

/** A turn: also while it is under way, when the firm moves the day; where the vehicle is away, its place says so too. */
export const changeSublet: CommandRule<'changeSublet'> = {
  needs: ({ subletId }) => ({ sublets: [subletId], tables: subletTables }),
  decide(rows, input) {
    const found = subletOf(rows, input.subletId);
    if (found instanceof Refused) return found;
    const { sublet, job } = found;
    if (sublet.state !== 'arranged' && sublet.state !== 'underWay') {
      return refuse('sublet.over', { state: sublet.state });
    }
    const missing = absent(rows, { supplier: input.supplierId });
    if (missing) return missing;
    const firm = input.firm ?? sublet.firm;
    rows.change('sublet', sublet.id, { ...factsSaid(sublet, input), firm });
    for (const place of rows.list('place', (one) => one.subletId === sublet.id && one.toAt === null)) {
      if (input.dueBackAt !== undefined) rows.change('place', place.id, { dueBackAt: input.dueBackAt });
    }
    for (const hold of holdsOf(rows, sublet.id))
      if (hold.moveOf !== firm) rows.change('hold', hold.id, { moveOf: firm });
    return { facts: { jobId: job.id, subletId: sublet.id } };
  },
};

export const cancelSublet: CommandRule<'cancelSublet'> = {
  needs: ({ subletId }) => ({ sublets: [subletId], tables: ['sublet'] }),
  decide(rows, { subletId, words }) {
    const found = subletOf(rows, subletId);
    if (found instanceof Refused) return found;
    const { sublet, job } = found;
    if (sublet.state !== 'arranged') return refuse('sublet.notArranged', { state: sublet.state });
    rows.change('sublet', sublet.id, { state: 'cancelled', endWords: words });
    return { facts: { jobId: job.id, subletId: sublet.id } };
  },
};

function holdsOf(rows: Rows, subletId: string): Row<'hold'>[] {
  return rows.list('hold', (hold) => hold.subletId === subletId && hold.toAt === null);
}

/** It is under way from `fromAt` (epoch ms) on; while the vehicle or a part of it is out, the other firm holds it up. */
export function begin(rows: Rows, at: Circumstances, { job, sublet }: SubletOfVisit, fromAt: number): string | null {
  rows.change('sublet', sublet.id, { state: 'underWay', fromAt });
  if (sublet.form === 'outsiderIn') return null;
  const holdId = at.newId();
  rows.add('hold', {
    id: holdId,
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: job.vehicleId,
    reason: 'sublet',
    words: sublet.component,
    moveOfId: null,
    moveOf: sublet.firm,
    endsAt: null,
    openedById: at.by.personId,
    fromAt,
    toAt: null,
    endedHow: null,
    endWords: null,
    endedById: null,
    againOfId: null,
    subletId: sublet.id,
  });
  // Nobody works on a vehicle that is away, whatever line the firm has.
  if (sublet.form === 'componentOut' && sublet.lineId !== null) {
    rows.add('holdLine', { id: at.newId(), holdId, jobId: job.id, lineId: sublet.lineId });
  }
  return holdId;
}

/** It is over at `toAt` (epoch ms); its line stays, to be finished by hand. */
export function endSublet(
  rows: Rows,
  at: Circumstances,
  sublet: Row<'sublet'>,
  {
    toAt,
    price,
    words,
  }: { readonly toAt: number; readonly price: string | undefined; readonly words: string | undefined },
): void {
  rows.change('sublet', sublet.id, {
    state: 'ended',
    toAt: Math.max(toAt, (sublet.fromAt ?? toAt) + 1),
    price: price === undefined ? sublet.price : canonical(price),
    endWords: words ?? null,
  });
  for (const hold of holdsOf(rows, sublet.id)) {
    const until = Math.max(hold.fromAt, toAt);
    rows.change('hold', hold.id, {
      toAt: until,
      endedHow: 'byHand',
      endedById: at.by.personId,
      endWords: words ?? null,
    });
  }
}
