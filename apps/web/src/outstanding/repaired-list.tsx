import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Knot } from '../ui/marks/stitched-line.js';
import { Plate } from '../ui/plate.js';

/** Fixes of vehicles on the board that have lately ended: the stitched line ends in its knot where it was repaired for good. */
export const RepairedList = ({ vehicleId }: { readonly vehicleId: string | null }): ReactElement | null => {
  const { t, format } = useText();
  const { tables } = useBoard();
  const now = useNow();
  const ended = [...tables.temporaryFix.values()]
    .filter((fix) => fix.endedAt !== null && (vehicleId === null || fix.vehicleId === vehicleId))
    .sort((a, b) => (b.endedAt ?? 0) - (a.endedAt ?? 0));
  if (ended.length === 0) return null;
  const stillOn = (id: string): number =>
    [...tables.temporaryFix.values()].filter((fix) => fix.vehicleId === id && fix.state !== 'ended').length;
  return (
    <Part heading={t('outstanding.ended')} under={t('outstanding.endedUnder')}>
      <Entries>
        {ended.map((fix) => (
          <Entry key={fix.id}>
            <div className="hf-entry-line">
              <Plate plate={tables.vehicle.get(fix.vehicleId)?.plate ?? ''} fixCount={stillOn(fix.vehicleId)} />
              {fix.endedHow === 'repaired' && <Knot title={t('mark.knot')} length={96} />}
              <span>
                {t('outstanding.endedHow', {
                  place: fix.place,
                  how: t(`word.fixEnd.${fix.endedHow ?? 'repaired'}`),
                  at: format.moment(fix.endedAt ?? now, now),
                })}
              </span>
            </div>
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};
