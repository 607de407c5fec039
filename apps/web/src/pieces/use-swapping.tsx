import { wouldRefuse, type Spot, type Visit } from '@holdfast/board';
import type { Refusal, SwapBays } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { useSend, type Sending } from '../live/use-send.js';
import { LoadQuestion } from './load-question.js';
import { asksForLoad, useBy, type LoadSaid, type Moving } from './placing.js';

type Answers = NonNullable<SwapBays['loaded']>;
type Pair = { readonly visit: Visit; readonly other: Visit; readonly moving: Moving };
type Asked = Pair & { readonly answers: Answers };

export type Swapping = {
  readonly sending: Sending;
  /** What stands against it besides the load, which is asked. */
  readonly against: (pair: Pair) => readonly Refusal[];
  readonly asksLoad: (pair: Pair) => boolean;
  readonly swap: (pair: Pair) => void;
  /** The question that is open, if one is. */
  readonly question: ReactElement | null;
};

/** Two vehicles that stand in bays change places in one go; where a lift asks for a load it is asked first, of each. */
export const useSwapping = (onSwapped: () => void): Swapping => {
  const board = useBoard();
  const now = useNow();
  const by = useBy();
  const sending = useSend();
  const [asked, setAsked] = useState<Asked | null>(null);
  const judge = ({ visit, other, moving }: Pair, loaded: Answers): readonly Refusal[] => {
    const jobIds: [string, string] = [visit.job.id, other.job.id];
    return wouldRefuse(board, 'swapBays', { jobIds, ...moving, ...(loaded.length === 0 ? {} : { loaded }) }, by, now);
  };
  const take = async ({ visit, other, moving, answers }: Asked): Promise<void> => {
    const jobIds: [string, string] = [visit.job.id, other.job.id];
    const input = { jobIds, ...moving, ...(answers.length === 0 ? {} : { loaded: answers }) };
    const values = { plate: visit.vehicle.plate, other: other.vehicle.plate };
    if (await sending.run('swapBays', input, { text: 'swap.done', values })) {
      setAsked(null);
      onSwapped();
    }
  };
  const goOn = (next: Asked): void => {
    if (judge(next, next.answers).some(({ code }) => asksForLoad(code))) setAsked(next);
    else void take(next);
  };
  return {
    sending,
    against: (pair) => judge(pair, []).filter(({ code }) => !asksForLoad(code)),
    asksLoad: (pair) => judge(pair, []).some(({ code }) => asksForLoad(code)),
    swap: (pair) => {
      goOn({ ...pair, answers: [] });
    },
    question: asked && (
      <SwapQuestion
        key={asked.answers.length}
        asked={asked}
        judge={judge}
        sending={sending}
        onSaid={goOn}
        onClose={() => {
          setAsked(null);
        }}
      />
    ),
  };
};

type QuestionProps = {
  readonly asked: Asked;
  readonly judge: (pair: Pair, answers: Answers) => readonly Refusal[];
  readonly sending: Sending;
  readonly onSaid: (asked: Asked) => void;
  readonly onClose: () => void;
};

/** "Loaded or empty?" of the first vehicle whose lift still asks. */
const SwapQuestion = ({ asked, judge, sending, onSaid, onClose }: QuestionProps): ReactElement | null => {
  const board = useBoard();
  const open = judge(asked, asked.answers).filter(({ code }) => asksForLoad(code));
  const jobId = open[0]?.facts['jobId'];
  const one = jobId === asked.other.job.id ? asked.other : asked.visit;
  const to = one === asked.visit ? asked.other : asked.visit;
  const ofOne = (refusal: Refusal): boolean => refusal.facts['jobId'] === one.job.id;
  const withAnswer = (said: LoadSaid): Answers => [
    ...asked.answers,
    { jobId: one.job.id, loaded: said.loaded === true, ...(said.loadKg === undefined ? {} : { loadKg: said.loadKg }) },
  ];
  return (
    <LoadQuestion
      plate={one.vehicle.plate}
      bay={board.tables.bay.get(to.place?.bayId ?? '')?.name ?? ''}
      command="swapBays"
      asks={open.filter(ofOne)}
      judge={(said) => judge(asked, withAnswer(said)).filter(ofOne)}
      sending={sending}
      onPlace={(said) => {
        onSaid({ ...asked, answers: withAnswer(said) });
      }}
      onClose={onClose}
    />
  );
};

/** The visit in the spot with which the picked one could change places: both stand in bays, and not in the same spot. */
export const swapsWith = (visit: Visit, spot: Spot, standing: Visit | undefined): Visit | null =>
  visit.place?.kind === 'bay' &&
  spot.use?.kind === 'stands' &&
  standing !== undefined &&
  standing.job.id !== visit.job.id
    ? standing
    : null;
