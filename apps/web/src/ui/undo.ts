import { create } from 'zustand';

export type UndoOffer = {
  /** What was done: "BN 03 TX placed in bay 4." */
  readonly sentence: string;
  readonly undo: () => void;
};

type Undo = {
  readonly offer: UndoOffer | null;
  /** Counts offers, so that a new one with the same words starts its ten seconds anew. */
  readonly turn: number;
};

export const useUndo = create<Undo>()(() => ({ offer: null, turn: 0 }));

/** Says what was done and offers to take it back for ten seconds; a newer offer takes the place of the older. */
export const offerUndo = (offer: UndoOffer): void => {
  useUndo.setState((state) => ({ offer, turn: state.turn + 1 }));
};

export const withdrawUndo = (): void => {
  useUndo.setState({ offer: null });
};
