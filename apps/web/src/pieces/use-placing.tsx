import type { Spot, Visit } from '@holdfast/board';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend, type Sending } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { liftsVehicles, useLiftReminder, type LiftReminder } from './lift-words.js';
import { LoadQuestion } from './load-question.js';
import { judgeSpot, useBy, type LoadSaid, type Moving, type SpotVerdict } from './placing.js';

type Asked = { readonly visit: Visit; readonly spot: Spot; readonly moving: Moving };

export type Placing = {
  readonly sending: Sending;
  /** What decides besides the rated capacity, told once per person and day. */
  readonly reminder: LiftReminder;
  readonly judge: (visit: Visit, spot: Spot, moving: Moving) => SpotVerdict;
  /** Places it, or asks first whether it is loaded. Does nothing where it cannot stand. */
  readonly place: (visit: Visit, spot: Spot, moving: Moving) => void;
  /** It stands there already: recorded whatever the rules say, and flagged. */
  readonly seen: (visit: Visit, spot: Spot, moving: Moving) => void;
  readonly toYard: (visit: Visit, yardSpot: string | undefined, moving: Moving) => void;
  /** The question that is open, if one is; stands anywhere on the screen. */
  readonly question: ReactElement | null;
};

/** "Bay 2", or "Bay 5, spot 2" where a bay has several. */
export const useSpotName = (): ((spot: Pick<Spot, 'bay' | 'spec' | 'spot'>) => string) => {
  const { t } = useText();
  return ({ bay, spec, spot }) => (spec.spots > 1 ? t('placing.spotOf', { bay: bay.name, spot }) : bay.name);
};

/** Moves vehicles: into a bay, as a report of what is seen there, or to the yard; each can be undone for ten seconds. */
export const usePlacing = (onPlaced: (spot: Spot | null) => void): Placing => {
  const { t } = useText();
  const board = useBoard();
  const now = useNow();
  const by = useBy();
  const sending = useSend();
  const nameOf = useSpotName();
  const reminder = useLiftReminder();
  const [asked, setAsked] = useState<Asked | null>(null);
  const finish = (spot: Spot | null): void => {
    if (spot !== null && liftsVehicles(spot.spec.equipment)) reminder.wasTold();
    setAsked(null);
    onPlaced(spot);
  };
  const take = async (asking: Asked, said: LoadSaid & { alreadyThere?: true }): Promise<void> => {
    const { visit, spot, moving } = asking;
    const input = { placeId: newId(), jobId: visit.job.id, bayId: spot.bay.id, spot: spot.spot, ...moving, ...said };
    const text = said.alreadyThere === true ? 'placing.seen' : 'placing.placed';
    const values = { plate: visit.vehicle.plate, bay: nameOf(spot) };
    if (await sending.run('takeIntoBay', input, { text, values })) finish(spot);
  };
  const judge = (visit: Visit, spot: Spot, said: Moving & LoadSaid): SpotVerdict =>
    judgeSpot(board, { visit, spot, said, by, now });
  return {
    sending,
    reminder,
    judge,
    place: (visit, spot, moving) => {
      const verdict = judge(visit, spot, moving);
      if (verdict.kind === 'can') void take({ visit, spot, moving }, {});
      else if (verdict.kind === 'asksLoad') setAsked({ visit, spot, moving });
    },
    seen: (visit, spot, moving) => void take({ visit, spot, moving }, { alreadyThere: true }),
    toYard: (visit, yardSpot, moving) => {
      const input = {
        placeId: newId(),
        jobId: visit.job.id,
        ...(yardSpot === undefined ? {} : { yardSpot }),
        ...moving,
      };
      const values = {
        plate: visit.vehicle.plate,
        place: yardSpot === undefined ? t('word.place.yard') : t('visit.yardSpot', { spot: yardSpot }),
      };
      void sending.run('moveToYard', input, { text: 'placing.toYard', values }).then((answer) => {
        if (answer) finish(null);
      });
    },
    question: asked && (
      <LoadQuestion
        plate={asked.visit.vehicle.plate}
        bay={nameOf(asked.spot)}
        asks={refusalsOf(judge(asked.visit, asked.spot, asked.moving))}
        judge={(said) => refusalsOf(judge(asked.visit, asked.spot, { ...asked.moving, ...said }))}
        sending={sending}
        onPlace={(said) => void take(asked, said)}
        onClose={() => {
          setAsked(null);
        }}
      />
    ),
  };
};

const refusalsOf = (verdict: SpotVerdict) => (verdict.kind === 'can' ? [] : verdict.refusals);
