import type { Spot, Visit } from '@holdfast/board';
import type { Refusal } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useSentences } from './sentences.js';
import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { bayPath } from '../screen-paths.js';
import { Opener } from './form-sheet.js';
import { LiftingPointsForm } from './lifting-points-form.js';
import { useVisitWords } from './visit-words.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import './placing.css';
import { asksForLoad, type Moving } from './placing.js';
import type { Placing } from './use-placing.js';

type SpotPlaceProps = {
  readonly spot: Spot;
  readonly name: string;
  readonly visit: Visit;
  readonly picked: { readonly placing: Placing; readonly moving: Moving };
};

/** The way out of what stands against it, for those who may: the points are named here, an overdue lift is decided on its bay's page. */
const WayOut = ({ refusal, visit }: { readonly refusal: Refusal; readonly visit: Visit }): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const { plate } = visit.vehicle;
  if (refusal.code === 'lift.pointsNotNamed') {
    return (
      <Opener label={t('points.open')} command="nameLiftingPoints" about={plate}>
        {(close) => <LiftingPointsForm jobId={visit.job.id} vehicle={visit.vehicle} onClose={close} />}
      </Opener>
    );
  }
  const leads = refusal.way?.table === 'bay' && may.command('allowOverdueLift');
  return leads ? <Link href={bayPath(refusal.way.id)}>{t('live.goThere')}</Link> : null;
};

/** What this spot says to a picked vehicle: one large button with what would follow, or why not. */
export const SpotPlace = ({ spot, name, visit, picked }: SpotPlaceProps): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const words = useVisitWords(board, useNow());
  const sentences = useSentences();
  const { placing, moving } = picked;
  const verdict = placing.judge(visit, spot, moving);
  const standsHere = verdict.kind === 'cannot' && verdict.refusals.some((refusal) => refusal.code === 'place.thisSpot');
  // Whether it is loaded is asked once nothing else stands against it.
  const against = verdict.kind === 'cannot' ? verdict.refusals.filter((refusal) => !asksForLoad(refusal.code)) : [];
  return (
    <div className="hf-spot-place">
      {verdict.kind === 'cannot' ? (
        <ul className="hf-spot-why">
          {against.map((refusal) => (
            <li key={`${refusal.code} ${refusal.way?.id ?? ''}`}>
              {sentences.refusal(refusal)} <WayOut refusal={refusal} visit={visit} />
            </li>
          ))}
        </ul>
      ) : (
        <Button
          look="ink"
          command="takeIntoBay"
          isPending={placing.sending.pending}
          follows={verdict.kind === 'asksLoad' ? t('floor.asksLoad') : words.rest(visit)}
          onPress={() => {
            placing.place(visit, spot, moving);
          }}
        >
          {t('floor.placeIn', { bay: name })}
        </Button>
      )}
      {!standsHere && (
        <Button
          size="small"
          look="plain"
          command="takeIntoBay"
          isPending={placing.sending.pending}
          label={t('floor.standsThereNamed', { plate: visit.vehicle.plate, bay: name })}
          onPress={() => {
            placing.seen(visit, spot, moving);
          }}
        >
          {t('floor.standsThere')}
        </Button>
      )}
    </div>
  );
};
