import { describe, expect, it } from '@jest/globals';

import { barOf, firstDayWithRoom, scaleOf, type LoadedDay } from './day-room.js';

const day = (date: string, peopleMinutes: number, loadMinutes: number): LoadedDay => ({
  day: date,
  peopleMinutes,
  loadMinutes,
  bookedMinutes: 0,
  bookedJobs: 0,
});

const full = day('2026-11-25', 480, 480);
const closed = day('2026-11-26', 0, 0);
const over = day('2026-11-27', 480, 600);
const half = day('2026-11-28', 480, 240);
const empty = day('2026-11-29', 480, 0);
const days = [full, closed, over, half, empty];

describe('the first day with room', () => {
  it('passes over full, closed and overfull days', () => {
    expect(firstDayWithRoom(days, 60)).toBe(half);
  });

  it('takes a day that has exactly as much left, and no day that has a minute less', () => {
    expect(firstDayWithRoom(days, 240)).toBe(half);
    expect(firstDayWithRoom(days, 241)).toBe(empty);
  });

  it('names no day where none has the room in one go, and none where nothing is asked for', () => {
    expect(firstDayWithRoom(days, 481)).toBeNull();
    expect(firstDayWithRoom(days, 0)).toBeNull();
  });
});

describe('the bar of a day', () => {
  it('is drawn on one scale with the others, wide enough for the fullest', () => {
    expect(scaleOf(days)).toBe(600);
    expect(barOf(half, 600)).toEqual({ frame: 80, within: 40, past: 0 });
  });

  it('shows what is more than the people have past the frame, never inside it', () => {
    expect(barOf(over, 600)).toEqual({ frame: 80, within: 80, past: 20 });
    expect(barOf(day('2026-11-30', 0, 120), 600)).toEqual({ frame: 0, within: 0, past: 20 });
  });
});
