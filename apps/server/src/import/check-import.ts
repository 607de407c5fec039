import type { Locale } from '@holdfast/contract';
import { RowChecker } from './check-rows.js';
import { proposedMapping } from './header-words.js';
import type { CheckRun, Imports, ImportStore } from './ports.js';

/** Rows that are looked at and kept at once. */
const chunk = 400;

export interface ImportParts {
  readonly store: ImportStore;
  readonly localeOf: (shopId: string) => Promise<Locale>;
  readonly newId: () => string;
  readonly failed: (failure: unknown) => void;
}

/** Puts files beside the shop's rows and looks at them behind the answers, a chunk at a time. */
export function makeImports({ store, localeOf, newId, failed }: ImportParts): Imports {
  const running = new Set<Promise<void>>();
  const state = { closing: false };

  async function look(run: CheckRun): Promise<void> {
    const checker = new RowChecker({ run, locale: await localeOf(run.shopId), newId });
    for (let number = 0; !state.closing;) {
      const began = performance.now();
      const rows = await store.rowsAfter(run, number, chunk);
      const last = rows.at(-1);
      if (last === undefined) return store.endCheck(run, 'checked');
      const known = await store.known(run.shopId, checker.keysOf(rows));
      if (!(await store.keep(run, checker.check(rows, known)))) return;
      number = last.number;
      // As long again for the shop's own commands.
      await new Promise((resolve) => setTimeout(resolve, performance.now() - began));
    }
    return store.endCheck(run, 'staged');
  }

  return {
    add: (shopId, personId, file) =>
      store.stage(shopId, personId, { ...file, mapping: proposedMapping(file.kind, file.header) }),
    async map(shopId, importId, mapping) {
      if (state.closing) return 'ended';
      const run = await store.startCheck(shopId, importId, mapping);
      if (run === null || run === 'ended') return run;
      const looking = look(run)
        .catch(async (failure: unknown) => {
          failed(failure);
          await store.endCheck(run, 'staged').catch(failed);
        })
        .finally(() => running.delete(looking));
      running.add(looking);
      return 'begun';
    },
    discard: (shopId, importId) => store.discard(shopId, importId),
    async close() {
      state.closing = true;
      await Promise.all(running);
    },
  };
}
