import { type CommandInputs, type CommandName } from '@holdfast/domain';
import type { ProblemDetails, Wire } from '@holdfast/contract';
import { useState } from 'react';

import type { TextKey } from '@holdfast/contract';
import { useText } from '../text/use-text.js';
import { offerUndo } from '../ui/undo.js';
import { type CommandAnswer, send } from './send.js';

export interface Sending {
  readonly pending: boolean;
  /** The last refusal, until the next attempt; show it with `Refusal`. */
  readonly problem: ProblemDetails | null;
  readonly clear: () => void;
  /** Null when it was refused (then `problem` says why). `done` names the text of the Undo bar; without it no Undo. */
  readonly run: <N extends CommandName>(
    name: N,
    input: Wire<CommandInputs[N]>,
    done?: { readonly text: TextKey; readonly values?: Readonly<Record<string, string | number>> },
  ) => Promise<CommandAnswer | null>;
}

/** Sends a form's or a button's command, keeps its refusal for the screen, and offers Undo for what was accepted. */
export function useSend(): Sending {
  const { t } = useText();
  const [pending, setPending] = useState(false);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  return {
    pending,
    problem,
    clear: () => {
      setProblem(null);
    },
    run: async (name, input, done) => {
      setPending(true);
      setProblem(null);
      try {
        const sent = await send(name, input);
        if (!sent.ok) {
          setProblem(sent.problem);
          return null;
        }
        if (done) {
          const { seq } = sent.answer;
          offerUndo({ sentence: t(done.text, done.values), undo: () => void takeBack(seq, setProblem) });
        }
        return sent.answer;
      } catch {
        setProblem(unreachable(t('live.notSent')));
        return null;
      } finally {
        setPending(false);
      }
    },
  };
}

async function takeBack(seq: number, setProblem: (problem: ProblemDetails) => void): Promise<void> {
  const sent = await send('takeBack', { seq });
  if (!sent.ok) setProblem(sent.problem);
}

function unreachable(detail: string): ProblemDetails {
  return { type: 'about:blank', code: 'server.busy', title: detail, status: 503, detail, traceId: '' };
}
