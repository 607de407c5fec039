import type { BayTimeView } from '@holdfast/contract';
import { holdReasons, type HoldReason } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { BayRow } from '../strip/bay-row.js';
import { StripBoard } from '../strip/strip-board.js';
import type { StripSegment } from '../strip/strip-model.js';
import { useText } from '../text/use-text.js';
import { percent } from './totals-table.js';

type Segments = NonNullable<BayTimeView['bays'][number]['spots'][number]['segments']>;

const reasonOf = (word: string | null): HoldReason | undefined => holdReasons.find((reason) => reason === word);

const drawn = (segments: Segments): StripSegment[] =>
  segments.map(({ from, to, class: kind, reason }) => {
    const known = reasonOf(reason);
    return { from: Date.parse(from), to: Date.parse(to), kind, ...(kind === 'held' && known ? { reason: known } : {}) };
  });

/** One day as strips, from its first opening to its last closing. */
export const DayStrips = ({ view }: { readonly view: BayTimeView }): ReactElement | null => {
  const text = useText();
  const { t } = text;
  const first = view.open[0]?.[0];
  const last = view.open.at(-1)?.[1];
  if (first === undefined || last === undefined) return null;
  const window = { from: Date.parse(first), to: Date.parse(last), now: Date.parse(view.now) };
  return (
    <StripBoard label={t('bayTime.day')} {...window}>
      {view.bays.flatMap((bay) =>
        bay.spots.map((spot) => (
          <BayRow
            key={`${bay.bayId} ${String(spot.spot)}`}
            subject={{ name: bay.spots.length > 1 ? t('bayTime.spot', { bay: bay.name, spot: spot.spot }) : bay.name }}
            cautions={[]}
            state={t('bayTime.useOf', { percent: percent(spot.totals.utilisation, text) })}
            segments={drawn(spot.segments ?? [])}
            stitched={[]}
          />
        )),
      )}
    </StripBoard>
  );
};
