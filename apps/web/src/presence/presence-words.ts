import type { Board } from '@holdfast/board';
import type { Row } from '@holdfast/domain';

import { useText } from '../text/use-text.js';
import type { Presence } from './presence.js';

/** What is known of a person as one phrase: "free since 10:12", "on a break since 12:02, 14 min". */
export const usePresenceWords = (board: Board, now: number): ((presence: Presence, isFree?: boolean) => string) => {
  const { t, format } = useText();
  const lasting = (since: number) => ({
    since: format.moment(since, now),
    duration: format.duration((now - since) / 60_000),
  });
  const working = ({ jobId, lineId, fromAt }: Row<'clock'>): string => {
    const vehicle = board.tables.vehicle.get(board.tables.job.get(jobId)?.vehicleId ?? '');
    const line = board.tables.workLine.get(lineId);
    return t('presence.is.working', { plate: vehicle?.plate ?? '', line: line?.title ?? '', ...lasting(fromAt) });
  };
  return (presence, isFree = false) => {
    switch (presence.kind) {
      case 'present':
        if (presence.clock !== null) return working(presence.clock);
        return t(isFree ? 'presence.is.free' : 'presence.is.here', lasting(presence.since));
      case 'break':
        return t('presence.is.break', lasting(presence.since));
      case 'shopTime':
        return t('presence.is.shopTime', { words: presence.words ?? 'empty', ...lasting(presence.since) });
      case 'notEnded':
        return t('presence.is.notEnded', lasting(presence.since));
      case 'gone':
        return t('presence.is.gone', { since: format.time(presence.since) });
      case 'awaited':
        return t(presence.isLate ? 'presence.is.late' : 'presence.is.awaited', { from: format.time(presence.from) });
      case 'notToday':
        return t('presence.is.notToday');
    }
  };
};
