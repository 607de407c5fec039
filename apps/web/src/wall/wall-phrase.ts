import type { Spot, Visit } from '@holdfast/board';
import type { TextKey } from '@holdfast/contract';

/** The one phrase of a row, at most eleven characters in every catalogue (wall-phrase.spec.ts). */
export const wallPhrase = (
  { spec, use }: Pick<Spot, 'spec' | 'use'>,
  visit: Pick<Visit, 'state' | 'place' | 'lines'> | undefined,
): TextKey => {
  if (visit === undefined) return spec.outOfUse ? 'wall.state.outOfUse' : 'wall.state.empty';
  if (use?.kind === 'kept') return visit.place?.kind === 'away' ? 'wall.state.away' : 'wall.state.kept';
  const { state } = visit;
  switch (state.kind) {
    case 'worked':
      return 'wall.state.worked';
    case 'held':
      return `wall.held.${state.reason}`;
    case 'stored':
      return 'wall.state.stored';
    case 'noReason':
      if (state.workLeft) return 'wall.state.noReason';
      return visit.lines.length === 0 ? 'wall.state.noLines' : 'wall.state.workDone';
    case 'ended':
      return 'wall.state.ended';
  }
};
