/** The checker's part about calendars: work goes on only while the bay and everybody on the line are there. */
import { type Interval, intersect, subtract, summedMs } from '@holdfast/shop-calendar';
import type { CheckedLine, Report } from './checked-line.js';
import type { PlanModel, PlanSpot } from './model.js';

const minute = 60_000;

/** When the spot may be planned: the last part of each day, as long as the share says, is left free. */
export function plannableTime(model: PlanModel, spot: PlanSpot): readonly Interval[] | null {
  if (spot.open === null || model.freeShare === 0) return spot.open;
  let plannable = spot.open;
  for (const day of model.days) {
    const open = intersect(spot.open, [day]);
    let free = Math.floor((summedMs(open) * model.freeShare) / minute) * minute;
    for (const part of [...open].reverse()) {
      const taken = Math.min(free, part.to - part.from);
      if (taken > 0) plannable = subtract(plannable, [{ from: part.to - taken, to: part.to }]);
      free -= taken;
    }
  }
  return plannable;
}

/** Open milliseconds of a calendar (null: always) in [from, to). */
export function openIn(open: readonly Interval[] | null, from: number, to: number): number {
  const window = { from, to };
  return from >= to ? 0 : summedMs(open === null ? [window] : intersect(open, [window]));
}

function checkStart(model: PlanModel, { planned, job, line }: CheckedLine, report: Report): void {
  const { from } = planned;
  const fixedStart = line.fixed?.startsAt;
  if (fixedStart !== undefined) {
    if (fixedStart !== from) report('fixedStartNotKept', line.lineId);
  } else if (from < Math.max(model.now, job.arrivesAt, ...line.notBefore.map((one) => one.at))) {
    report('tooEarly', line.lineId);
  }
}

/** When the spot and everybody on the line are there; null: always. A fixed start may use the time left free. */
function thereFor(model: PlanModel, { planned, line }: CheckedLine, spot: PlanSpot): readonly Interval[] | null {
  let there = line.fixed?.startsAt === undefined ? plannableTime(model, spot) : spot.open;
  for (const id of planned.personIds) {
    const open = model.people.find((one) => one.personId === id)?.open ?? null;
    if (open !== null) there = there === null ? open : intersect(there, open);
  }
  return there;
}

function checkWorkTime(model: PlanModel, one: CheckedLine, spot: PlanSpot, report: Report): void {
  const { planned, line } = one;
  const { from, to } = planned;
  const { lineId } = line;
  const there = thereFor(model, one, spot);
  const work = (line.minutesBySpot?.[spot.spotId] ?? line.workMinutes) * minute;
  if (openIn(there, from, to) !== work) report('workTimeWrong', lineId);
  if (line.fixed?.startsAt === undefined && openIn(there, from, from + 1) === 0) report('notInOpenTime', lineId);
  if (openIn(there, to - 1, to) === 0) report('notInOpenTime', lineId);
}

export function checkTimes(model: PlanModel, one: CheckedLine, report: Report): void {
  const { planned, line } = one;
  checkStart(model, one, report);
  if (planned.to > model.horizon) report('beyondHorizon', line.lineId);
  if (line.sublet !== null) {
    const inSlot = line.sublet.slots.some((slot) => slot.from === planned.from && slot.to === planned.to);
    if (!inSlot) report('notInASlot', line.lineId);
    return;
  }
  const spot = model.spots.find((other) => other.spotId === planned.spotId);
  if (spot !== undefined) checkWorkTime(model, one, spot, report);
}
