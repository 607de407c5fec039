/** Lines of a visit become ways to the same end: the customer gives at most one of them. */
import type { MakeChoice } from '../inputs.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { lineEnded, live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { visitOf } from '../questions/visit.js';
import type { Row } from '../tables/tables.js';

export const makeChoice: CommandRule<'makeChoice'> = {
  needs: ({ jobId }) => ({ jobs: [jobId] }),
  decide(rows, input, at) {
    const visit = visitOf(rows, input.jobId);
    if (visit instanceof Refused) return visit;
    const { job } = visit;
    if (job.endedAt !== null) return refuse('work.jobEnded', { jobNumber: job.number });
    const lines = linesOfChoice(rows, input);
    if (lines instanceof Refused) return lines;
    const choiceId = input.choiceId ?? at.newId();
    for (const line of lines) {
      if (line.choiceId !== choiceId) rows.change('workLine', line.id, { choiceId });
    }
    return { facts: { jobId: job.id, choiceId, lines: lines.length } };
  },
};

/** At least two open lines of the visit, none in another choice, at most one of the whole choice given. */
function linesOfChoice(rows: Rows, { jobId, choiceId, lineIds }: MakeChoice): Row<'workLine'>[] | Refused {
  const lines: Row<'workLine'>[] = [];
  for (const id of new Set(lineIds)) {
    const line = live(rows, 'workLine', id);
    if (!line) return notThere('workLine', id);
    const way = { table: 'workLine', id };
    if (line.jobId !== jobId) return refuse('work.otherJob', { table: 'workLine', id });
    if (lineEnded(line)) return refuse('work.lineEnded', { progress: line.progress }, way);
    if (line.choiceId !== null && line.choiceId !== choiceId) return refuse('work.inOtherChoice', { lineId: id }, way);
    lines.push(line);
  }
  if (lines.length < 2) return refuse('work.choiceOfOne');
  const already = rows.list(
    'workLine',
    (one) => choiceId !== undefined && one.jobId === jobId && one.choiceId === choiceId && one.progress !== 'dropped',
  );
  const given = [...new Set([...lines, ...already])].filter((line) => line.goAhead === 'given');
  const second = given[1];
  return second ? refuse('work.choiceGivenTwice', { lineId: second.id }, { table: 'workLine', id: second.id }) : lines;
}
