import { spotsInOrder, type Board, type Visit } from '@holdfast/board';
import { useState, type ReactElement } from 'react';
import { useLocation } from 'wouter';

import { useMay } from '../live/session.js';
import { TakeOutOfUseForm } from '../pieces/outage-forms.js';
import { BackFromRoadTestForm, RoadTestForm } from '../pieces/road-test-forms.js';
import { BoardNoteForm } from '../pieces/small-turn-forms.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Sheet } from '../ui/layers/dialog.js';
import type { PickedState } from './picked.js';

type ActsProps = { readonly board: Board; readonly now: number; readonly visit: Visit; readonly picked: PickedState };

type Open = 'nothing' | 'acts' | 'roadTest' | 'back' | 'note' | 'outage';

type MoreProps = Omit<ActsProps, 'now'> & {
  readonly onOpen: (open: Open) => void;
};

/** What can be done with a vehicle besides placing it, each one large button. */
const MoreSheet = ({ visit, picked, onOpen }: MoreProps): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const [, navigate] = useLocation();
  const { job, vehicle, place } = visit;
  const close = (): void => {
    onOpen('nothing');
  };
  return (
    <Sheet isOpen onClose={close} heading={t('floor.moreHeading', { plate: vehicle.plate })}>
      <div className="hf-acts">
        {may.command('takeIntoBay') && (
          <Button
            size="act"
            onPress={() => {
              close();
              picked.pick(job.id);
            }}
          >
            {t('floor.place')}
          </Button>
        )}
        {place?.kind === 'roadTest'
          ? may.command('returnFromRoadTest') && (
              <Button
                size="act"
                onPress={() => {
                  onOpen('back');
                }}
              >
                {t('floor.roadTestBack')}
              </Button>
            )
          : may.command('takeOnRoadTest') && (
              <Button
                size="act"
                onPress={() => {
                  onOpen('roadTest');
                }}
              >
                {t('floor.roadTestOut')}
              </Button>
            )}
        {may.command('setBoardNote') && (
          <Button
            size="act"
            onPress={() => {
              onOpen('note');
            }}
          >
            {t('floor.boardNote')}
          </Button>
        )}
        {place?.kind === 'bay' && may.command('takeOutOfUse') && (
          <Button
            size="act"
            onPress={() => {
              onOpen('outage');
            }}
          >
            {t('floor.cannotBeUsed')}
          </Button>
        )}
        <Button
          size="act"
          onPress={() => {
            navigate(jobPath(job.id));
          }}
        >
          {t('floor.toJob')}
        </Button>
      </div>
      {place?.kind === 'bay' && may.command('swapBays') && <p className="hf-quiet">{t('floor.swapHint')}</p>}
    </Sheet>
  );
};

/** Pick it, or more; of one on a road test first that it is back. Nothing while another one is picked. */
export const VehicleActs = ({ board, now, visit, picked }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const [open, setOpen] = useState<Open>('nothing');
  const { plate } = visit.vehicle;
  if (picked.visit !== undefined) return null;
  const close = (): void => {
    setOpen('nothing');
  };
  const isOut = visit.place?.kind === 'roadTest';
  const spot = spotsInOrder(board, now).find(({ bay }) => bay.id === visit.place?.bayId);
  const canPick = may.command('takeIntoBay');
  const forms: Readonly<Record<Open, ReactElement | null>> = {
    nothing: null,
    acts: <MoreSheet board={board} visit={visit} picked={picked} onOpen={setOpen} />,
    roadTest: <RoadTestForm board={board} visit={visit} now={now} onClose={close} />,
    back: <BackFromRoadTestForm board={board} visit={visit} onClose={close} />,
    note: <BoardNoteForm job={visit.job} onClose={close} />,
    outage: spot ? <TakeOutOfUseForm board={board} bay={spot.bay} spec={spot.spec} onClose={close} /> : null,
  };
  return (
    <>
      {isOut && may.command('returnFromRoadTest') ? (
        <Button
          size="small"
          label={t('floor.roadTestBackNamed', { plate })}
          onPress={() => {
            setOpen('back');
          }}
        >
          {t('roadTest.backAct')}
        </Button>
      ) : (
        canPick && (
          <Button
            size="small"
            label={t('floor.pickNamed', { plate })}
            onPress={() => {
              picked.pick(visit.job.id);
            }}
          >
            {t('floor.pick')}
          </Button>
        )
      )}
      {(canPick || may.command('setBoardNote')) && (
        <Button
          size="small"
          look="plain"
          label={t('floor.moreNamed', { plate })}
          onPress={() => {
            setOpen('acts');
          }}
        >
          {t('floor.more')}
        </Button>
      )}
      {forms[open]}
    </>
  );
};

/** Asks why a vehicle stands; the same as a tap on its dots. */
export const SayWhy = ({ plate, ask }: { readonly plate: string; readonly ask: () => void }): ReactElement => {
  const { t } = useText();
  return (
    <Button size="small" look="plain" label={t('floor.sayWhyNamed', { plate })} onPress={ask}>
      {t('floor.sayWhy')}
    </Button>
  );
};
