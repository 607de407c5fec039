import { spotsInOrder, visitOf, type Board, type Spot, type Visit } from '@holdfast/board';
import { useState, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { LiftWords } from '../pieces/lift-words.js';
import { MovedHow, useMovedHow } from '../pieces/moved-how.js';
import { SpotPlace } from '../pieces/spot-place.js';
import { SwapPlace } from '../pieces/swap-place.js';
import { said } from '../pieces/typed.js';
import { usePlacing, useSpotName } from '../pieces/use-placing.js';
import { swapsWith, useSwapping } from '../pieces/use-swapping.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { Sheet } from '../ui/layers/dialog.js';

type MoveProps = {
  readonly board: Board;
  readonly visit: Visit;
  readonly now: number;
  /** The bay of the person, which stands first. */
  readonly homeBayId: string | undefined;
  readonly onClose: () => void;
};

/** Every spot as a place for this vehicle, one's own bay first. */
export const IntoBaySheet = ({ board, visit, now, homeBayId, onClose }: MoveProps): ReactElement => {
  const { t } = useText();
  const nameOf = useSpotName();
  const movedHow = useMovedHow();
  const placing = usePlacing(onClose);
  const swapping = useSwapping(onClose);
  const standingIn = ({ use }: Spot): Visit | undefined => (use === null ? undefined : visitOf(board, use.jobId, now));
  const moving = visit.vehicle.rolls ? {} : movedHow.moving;
  const spots = spotsInOrder(board, now);
  const own = spots.filter((spot) => spot.bay.id === homeBayId);
  const others = spots.filter((spot) => spot.bay.id !== homeBayId);
  return (
    <Sheet isOpen onClose={onClose} heading={t('bay.place.heading', { plate: visit.vehicle.plate })}>
      <LiftWords reminder={placing.reminder} />
      {!visit.vehicle.rolls && <MovedHow state={movedHow} />}
      <Refusal problem={placing.sending.problem ?? swapping.sending.problem} jobId={visit.job.id} />
      <ul className="hf-start-lines">
        {[...own, ...others].map((spot) => {
          const other = swapsWith(visit, spot, standingIn(spot));
          return (
            <li key={`${spot.bay.id} ${String(spot.spot)}`} className="hf-start-line" data-bay={nameOf(spot)}>
              <h3>
                {nameOf(spot)}
                {spot.bay.id === homeBayId && <span className="hf-quiet"> · {t('bay.place.mine')}</span>}
              </h3>
              {other !== null && <SwapPlace visit={visit} other={other} moving={moving} swapping={swapping} />}
              <SpotPlace spot={spot} name={nameOf(spot)} visit={visit} picked={{ placing, moving }} />
            </li>
          );
        })}
      </ul>
      {placing.question}
      {swapping.question}
    </Sheet>
  );
};

/** The vehicle stands in the yard: a fact, with its spot where it has one. */
export const ToYardSheet = ({ visit, onClose }: Pick<MoveProps, 'visit' | 'onClose'>): ReactElement => {
  const { t } = useText();
  const movedHow = useMovedHow();
  const placing = usePlacing(onClose);
  const [spot, setSpot] = useState('');
  return (
    <Sheet
      isOpen
      onClose={onClose}
      heading={t('bay.yard.heading', { plate: visit.vehicle.plate })}
      acts={
        <Button
          look="ink"
          command="moveToYard"
          isPending={placing.sending.pending}
          onPress={() => {
            placing.toYard(visit, said(spot), visit.vehicle.rolls ? {} : movedHow.moving);
          }}
        >
          {t('bay.yard.act')}
        </Button>
      }
    >
      <Field label={t('bay.yard.spot')} value={spot} onChange={setSpot} />
      {!visit.vehicle.rolls && <MovedHow state={movedHow} />}
      <Refusal problem={placing.sending.problem} jobId={visit.job.id} />
    </Sheet>
  );
};
