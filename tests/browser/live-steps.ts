/**
 * What one does at a window, and how long until it stands on the windows of the others. A step bites: what is awaited
 * was not there before the press, and the time runs from the press of the button that sends, not from the closed form.
 */
import { expect } from '@jest/globals';
import type { Locator, Page } from 'playwright-core';

export const atWindows = ['manager', 'technician', 'clerk'] as const;
export type Who = (typeof atWindows)[number];
type Sights = Readonly<Partial<Record<Who, readonly Locator[]>>>;

export interface Act {
  readonly by: Who;
  /** The button that sends. */
  readonly press: Locator;
  /** What appears in the windows of the others. */
  readonly seen?: Sights;
  /** What goes away there. */
  readonly gone?: Sights;
}

export interface LiveSteps {
  /** Presses and waits until both others have seen all of it; fails when one of them does not. */
  step(what: string, act: Act): Promise<void>;
  /** The steps that took longer than they may. */
  late(): readonly string[];
  /** Each step with the milliseconds of each other window, as a table. */
  table(): string;
}

// Playwright's own waiting looks twice a second at last; that is too coarse to measure by.
const pollMs = 40;
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Waits longer than a step may take, so that a slow one is told with its figure. */
const patience = 5_000;

interface Sight {
  readonly who: Who;
  readonly place: Locator;
  readonly isThere: boolean;
}

const holds = async ({ place, isThere }: Sight): Promise<boolean> =>
  isThere ? place.first().isVisible() : (await place.count()) === 0;

const sightsOf = ({ seen = {}, gone = {} }: Act): Sight[] =>
  atWindows.flatMap((who) => [
    ...(seen[who] ?? []).map((place) => ({ who, place, isThere: true })),
    ...(gone[who] ?? []).map((place) => ({ who, place, isThere: false })),
  ]);

export interface Shown {
  readonly who: Who;
  readonly page: Page;
}

/** `within`: milliseconds. `after` is told of each step with the windows that took part in it, for pictures. */
export function liveSteps(within: number, after: (what: string, shown: readonly Shown[]) => Promise<void>): LiveSteps {
  const rows: { readonly what: string; readonly by: Who; readonly ms: ReadonlyMap<Who, number> }[] = [];
  return {
    async step(what, act) {
      const sights = sightsOf(act);
      const others = atWindows.filter((who) => who !== act.by);
      expect([...new Set(sights.map(({ who }) => who))]).toEqual(others);
      for (const { who, place, isThere } of sights) {
        const before = { what, who, place: String(place), isThere: (await place.count()) > 0 };
        expect(before).toEqual({ ...before, isThere: !isThere });
      }
      // Whatever the page still has to do before the button can be pressed is no part of the step.
      await act.press.click({ trial: true });
      const ms = new Map<Who, number>();
      const from = performance.now();
      const all = sights.map(async (sight) => {
        const { who, place } = sight;
        while (!(await holds(sight))) {
          if (performance.now() - from > patience) throw new Error(`${what}: ${who} does not see ${String(place)}`);
          await pause(pollMs);
        }
        ms.set(who, Math.max(ms.get(who) ?? 0, Math.ceil(performance.now() - from)));
      });
      await Promise.all([act.press.click(), ...all]);
      rows.push({ what, by: act.by, ms });
      await act.press.page().getByRole('dialog').waitFor({ state: 'detached' });
      const shown = new Map([
        [act.press.page(), act.by],
        ...sights.map(({ who, place }) => [place.page(), who] as const),
      ]);
      await after(
        what,
        [...shown].map(([page, who]) => ({ who, page })),
      );
    },
    late: () => rows.filter(({ ms }) => Math.max(...ms.values()) > within).map(({ what }) => what),
    table: () => {
      const cell = (ms: number | undefined): string => (ms === undefined ? '' : String(ms)).padStart(11);
      return [
        `${'step'.padEnd(44)}${'done by'.padEnd(12)}${atWindows.map((who) => who.padStart(11)).join('')}  (ms)`,
        ...rows.map(
          ({ what, by, ms }) =>
            `${what.padEnd(44)}${by.padEnd(12)}${atWindows.map((who) => cell(ms.get(who))).join('')}`,
        ),
      ].join('\n');
    },
  };
}

/** When each page was loaded; a page that was reloaded since has another time. */
export const loadedAt = (pages: readonly Page[]): Promise<number[]> =>
  Promise.all(pages.map((page) => page.evaluate(() => performance.timeOrigin)));
