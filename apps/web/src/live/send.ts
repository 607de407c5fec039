/** Sends commands. Each has its key from the start; while the server cannot be reached it is sent again with that key. */
import { type CommandInputs, type CommandName } from '@holdfast/domain';
import { contractVersion, type ProblemDetails, type Wire } from '@holdfast/contract';
import { v7 as newId } from 'uuid';
import { create } from 'zustand';

import type { SentState } from '../ui/marks/sent-mark.js';
import { shopNow } from './board-store.js';
import { call, ProblemAnswer, Unreachable } from './http.js';

export interface CommandAnswer {
  readonly seq: number;
  readonly at: string;
  /** Ids of what was made, by table. */
  readonly created: Readonly<Record<string, string>>;
  /** Rules that what was recorded breaks. */
  readonly flags: readonly string[];
  /** Ids of reports that clash with what is settled. */
  readonly contested: readonly string[];
}

export type Sent =
  { readonly ok: true; readonly answer: CommandAnswer } | { readonly ok: false; readonly problem: ProblemDetails };

export interface Entry {
  readonly key: string;
  readonly name: CommandName;
  readonly at: number;
  readonly state: SentState;
  readonly seq: number | null;
  readonly problem: ProblemDetails | null;
}

const shownEntries = 12;

/** The last entries of this device with their marks, newest first. */
export const useEntries = create<{ readonly entries: readonly Entry[] }>()(() => ({ entries: [] }));

function mark(key: string, change: Partial<Entry>): void {
  useEntries.setState(({ entries }) => ({
    entries: entries.map((entry) => (entry.key === key ? { ...entry, ...change } : entry)),
  }));
}

export { newId };

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const longestTryMs = 30_000;

/** Sends one command and waits for its answer. A refusal is an answer, with the sentences to show. */
export async function send<N extends CommandName>(name: N, input: Wire<CommandInputs[N]>): Promise<Sent> {
  const key = newId();
  const entry: Entry = { key, name, at: shopNow(), state: 'sending', seq: null, problem: null };
  useEntries.setState(({ entries }) => ({ entries: [entry, ...entries].slice(0, shownEntries) }));
  for (const startedAt = Date.now(); ; await pause(1_000)) {
    try {
      const answer = await call<CommandAnswer>('POST', `/api/commands/${name}`, input, {
        'idempotency-key': key,
        'holdfast-contract': String(contractVersion),
        'holdfast-sent-at': new Date(shopNow()).toISOString(),
      });
      mark(key, { state: 'recorded', seq: answer.seq });
      return { ok: true, answer };
    } catch (failure) {
      const problem = failure instanceof ProblemAnswer ? failure.problem : null;
      const later = failure instanceof Unreachable || problem?.status === 503;
      if (later && Date.now() - startedAt < longestTryMs) continue;
      if (!problem) throw failure;
      mark(key, { state: 'needsYou', problem });
      return { ok: false, problem };
    }
  }
}
