/** Whether what came out is what the file says; a sentence where it is not, null where it is. */
import type { BayTimeView } from '@holdfast/contract';
import type { Expected, TotalsLine } from './script.js';
import type { CommandAnswer } from './shop-client.js';

const listed = (codes: readonly string[]) => [...codes].sort().join(', ');

export function outcomeDiffers(expected: Expected, answer: CommandAnswer): string | null {
  if (!answer.ok) {
    const { code, refusals, detail } = answer.problem;
    const codes = listed(refusals?.map((one) => one.code) ?? [code]);
    if (expected.refused && listed(expected.refused) === codes) return null;
    return `refused (${codes}: ${detail}), but ${expected.refused ? `${listed(expected.refused)} was expected` : 'it was to be accepted'}.`;
  }
  const { flags, contested } = answer.accepted;
  if (expected.refused) return `accepted, but it was to be refused (${listed(expected.refused)}).`;
  if (listed(expected.flags ?? []) !== listed(flags))
    return `flagged [${listed(flags)}], but [${listed(expected.flags ?? [])}] was expected.`;
  if ((expected.contested ?? false) !== contested.length > 0)
    return contested.length > 0 ? 'contested, which was not expected.' : 'not contested, but that was expected.';
  return null;
}

/** Classes are named as in the account; `held` by its reason as `held.parts`. What a bay does not name must be nought. */
export function totalsDiffer(stated: TotalsLine['totals'], view: BayTimeView): string | null {
  const faults: string[] = [];
  for (const { name, totals } of view.bays) {
    const is: Record<string, number> = {};
    for (const [one, ms] of Object.entries(totals.classMs)) if (one !== 'held') is[one] = ms;
    for (const [reason, ms] of Object.entries(totals.heldMs)) is[`held.${reason}`] = ms;
    Object.assign(is, { technician: totals.technicianMs, overtime: totals.technicianOvertimeMs });
    const said = stated[name] ?? {};
    for (const key of new Set([...Object.keys(is), ...Object.keys(said)])) {
      const [was, want] = [is[key] ?? 0, said[key] ?? 0];
      if (was !== want) faults.push(`${name}, ${key}: ${was} ms, stated are ${want} ms`);
    }
  }
  for (const name of Object.keys(stated))
    if (!view.bays.some((bay) => bay.name === name)) faults.push(`there is no bay ${name}`);
  return faults.length === 0 ? null : `${faults.join('; ')}.`;
}
