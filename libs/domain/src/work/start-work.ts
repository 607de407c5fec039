/** A person goes on a line's clock: intended, which rule 5 may refuse, or begun already, which is recorded and flagged. */
import { againstAct, flagAct } from '../cautions/against-cautions.js';
import { againstHotWork, flagHotWork } from '../cautions/hot-work-near.js';
import { type Circumstances, type Outcome, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { flag, type FlagRule } from '../kernel/flags.js';
import type { RefusalCode } from '../kernel/refusal-codes.js';
import { type Refusal, Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { StartWork } from '../inputs.js';
import { hasSkill, isLead, todayOf, workingPerson } from '../questions/people-and-shop.js';
import { live, lineEnded, runningClockOf, unfinishedBefore } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { isPutBack } from '../questions/totals.js';
import type { Row } from '../tables/tables.js';
import { applyEdits, clocksOfPerson } from '../timeline/lanes.js';
import { contestedReport, settledReport } from '../timeline/reports.js';
import { earliest, insert } from '../timeline/timeline.js';
import { type LineOfVisit, lineOfVisit } from './line-of-visit.js';
import { settledTables } from '../settle/settled-tables.js';
import { presentOnClock } from '../time/presence.js';

interface Start extends LineOfVisit {
  readonly input: StartWork;
  readonly person: Row<'person'>;
}

export const startWork: CommandRule<'startWork'> = {
  needs: ({ lineId, personId }) => ({
    lines: [lineId],
    sender: true,
    tables: [...settledTables, 'clock', 'caution', 'spotUse', 'report', 'attendance'],
    hotWork: true,
    people: personId === undefined ? [] : [personId],
  }),
  decide(rows, input, at) {
    const found = lineOfVisit(rows, input.lineId);
    if (found instanceof Refused) return found;
    const person = personOf(rows, input, at);
    if (person instanceof Refused) return person;
    if (input.clockId !== undefined && rows.find('clock', input.clockId)) {
      return refuse('work.alreadyRecorded', { table: 'clock', id: input.clockId });
    }
    const start = { ...found, input, person };
    return input.alreadyStarted === true ? recordStarted(rows, start, at) : goOn(rows, start, at);
  },
};

function personOf(rows: Rows, { personId }: StartWork, at: Circumstances): Row<'person'> | Refused {
  const id = personId ?? at.by.personId ?? '';
  if (!live(rows, 'person', id)) return notThere('person', id);
  if (id !== at.by.personId && !isLead(at.by)) return refuse('work.othersClock');
  return workingPerson(rows, id) ?? refuse('work.personLeft');
}

/** Said to who intends to start, flagged on what was started all the same: the same words for both. */
interface AgainstWork extends Refusal {
  readonly code: FlagRule & RefusalCode;
}

/** What rule 5 and an explicit "after" (rule 10) say against this person on this line. */
function againstWork(rows: Rows, { line, person }: Start, at: Circumstances): AgainstWork[] {
  const refusals: AgainstWork[] = [];
  const way = { table: 'workLine', id: line.id };
  // What was withdrawn may still be worked on: it is put back.
  if (line.goAhead !== 'given' && !isPutBack(line))
    refusals.push({ code: 'work.noGoAhead', facts: { goAhead: line.goAhead }, way });
  if (line.skill !== null && !hasSkill(rows, person.id, line.skill, todayOf(at))) {
    refusals.push({ code: 'work.skillMissing', facts: { skill: line.skill } });
  }
  const before = unfinishedBefore(rows, line);
  if (before) {
    const first = { table: 'workLine', id: before.id };
    refusals.push({ code: 'work.afterUnfinished', facts: { beforeLineId: before.id }, way: first });
  }
  return refusals;
}

/** What the cautions say against this person's work (a skill where high voltage is live), and hot work beside open fuel. */
function againstCautions(rows: Rows, { vehicle, person }: Start, at: Circumstances): Refusal[] {
  const actor = { personId: person.id };
  return [...againstAct(rows, at, vehicle.id, 'startWork', actor), ...againstHotWork(rows, at, vehicle.id)];
}

function goOn(rows: Rows, start: Start, at: Circumstances): Outcome | Refused {
  const { job, line, person } = start;
  if (job.endedAt !== null) return refuse('work.jobEnded', { jobNumber: job.number });
  if (lineEnded(line)) return refuse('work.lineEnded', { progress: line.progress });
  const against = againstWork(rows, start, at);
  const madeSafe = start.input.makesSafe === true && against.some(isNoGoAhead);
  const standing = madeSafe ? against.filter((one) => !isNoGoAhead(one)) : against;
  const refusals: Refusal[] = [...standing, ...againstCautions(rows, start, at)];
  const running = runningClockOf(rows, person.id);
  if (running) {
    const since = new Date(running.fromAt).toISOString();
    const way = { table: 'workLine', id: running.lineId };
    refusals.push({ code: 'work.onAnotherClock', facts: { lineId: running.lineId, since }, way });
  }
  if (refusals.length > 0) return new Refused(refusals);
  const clock = startClock(rows, start, at, at.now);
  if (madeSafe) {
    const subjects = { jobId: job.id, vehicleId: job.vehicleId };
    flag(rows, at, 'work.madeSafe', subjects, { lineId: line.id, personId: person.id });
  }
  return { facts: factsOf(start, false), created: { clock: clock.id } };
}

/** Making it safe waits for skills and cautions, and for nobody's word (rule 5). */
const isNoGoAhead = ({ code }: Refusal): boolean => code === 'work.noGoAhead';

function factsOf({ job, line, person }: Start, contested: boolean) {
  return { jobId: job.id, lineId: line.id, personId: person.id, contested };
}

/** The caller has made sure that the person is on no other clock from `when` (epoch ms) on. */
function startClock(rows: Rows, { job, line, person, input }: Start, at: Circumstances, when: number): Row<'clock'> {
  const lane = clocksOfPerson(rows, person.id);
  const fit = insert(lane, { fromAt: earliest(lane, when), toAt: null });
  if (!fit.fits) throw new Error(`${person.id} is on another clock`);
  const of = { jobId: job.id, lineId: line.id, personId: person.id };
  const row = { id: input.clockId ?? at.newId(), ...recordedBy(at), ...of, bench: input.bench ?? false };
  applyEdits(rows, at, 'clock', fit.edits, row);
  const clock = rows.get('clock', row.id);
  rows.change('workLine', line.id, { progress: 'started', startedAt: line.startedAt ?? clock.fromAt });
  presentOnClock(rows, at, person.id, clock.fromAt);
  return clock;
}

function recordStarted(rows: Rows, start: Start, at: Circumstances): Outcome {
  const { job, vehicle, line, person, input } = start;
  const subjects = { jobId: job.id, vehicleId: vehicle.id };
  for (const { code, facts } of againstWork(rows, start, at)) {
    flag(rows, at, code, subjects, { ...facts, lineId: line.id, personId: person.id });
  }
  flagAct(rows, at, subjects, 'startWork', { personId: person.id });
  flagHotWork(rows, at, subjects);
  const lane = clocksOfPerson(rows, person.id);
  const running = runningClockOf(rows, person.id);
  const happenedAt = running ? at.effectiveAt : earliest(lane, at.effectiveAt);
  const of = { jobId: job.id, vehicleId: vehicle.id, personId: person.id };
  const said = { kind: 'startWork', ...of, said: input, happenedAt } as const;
  const ended = job.endedAt !== null || lineEnded(line);
  if (running || ended) {
    const against = [...(running ? [running.id] : []), ...(ended ? [line.id] : [])];
    return { facts: factsOf(start, true), created: { report: contestedReport(rows, at, said, against).id } };
  }
  const clock = startClock(rows, start, at, happenedAt);
  const report = settledReport(rows, at, said);
  return { facts: factsOf(start, false), created: { clock: clock.id, report: report.id } };
}
