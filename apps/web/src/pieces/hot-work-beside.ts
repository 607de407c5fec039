import { calendarOfBoard, rowsOf, type Board } from '@holdfast/board';
import { bayAndNeighbours } from '@holdfast/domain';

import { useText } from '../text/use-text.js';
import type { ShownCaution } from '../ui/caution-slot.js';

/** Hot work on vehicles that stand in this bay's neighbours (next in the order of the building), by the bay's name. */
const hotWorkBeside = (board: Board, bayId: string, now: number): { id: string; bay: string }[] => {
  const rows = rowsOf(board);
  const beside = bayAndNeighbours(rows, bayId, calendarOfBoard(board).dateOf(now)).filter((one) => one !== bayId);
  return rows
    .list('caution', (one) => one.code === 'hotWork' && one.endedAt === null)
    .flatMap(({ id, vehicleId }) => {
      const use = rows.list(
        'spotUse',
        (one) => one.vehicleId === vehicleId && one.kind === 'stands' && one.toAt === null,
      )[0];
      return use !== undefined && beside.includes(use.bayId)
        ? [{ id, bay: board.tables.bay.get(use.bayId)?.name ?? '' }]
        : [];
    });
};

/**
 * The same as cautions of that bay at `now` (epoch ms): whoever is there minds them, whatever stands on the own vehicle.
 * None where there is no bay.
 */
export const useHotWorkBeside = (board: Board, bayId: string | null, now: number): ShownCaution[] => {
  const { t } = useText();
  if (bayId === null) return [];
  return hotWorkBeside(board, bayId, now).map(({ id, bay: name }) => ({
    id: `beside ${id}`,
    kind: 'caution',
    words: t('floor.hotWorkBeside', { bay: name }),
  }));
};
