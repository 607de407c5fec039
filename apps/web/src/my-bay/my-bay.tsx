// my-bay/ hides the technician's whole day on one screen. It guarantees that cautions and what was left open stand before
// everything else, that each act is one large button, that no status needs typing, and that what was entered shows where
// it is.
import type { Board } from '@holdfast/board';
import { useState, type ReactElement } from 'react';

import './my-bay.css';
import { useSignedIn } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { Cards } from '../pieces/cards.js';
import { FlagLines } from '../pieces/flag-lines.js';
import { ForgottenClocks } from '../pieces/forgotten-clocks.js';
import { OutageLines } from '../pieces/outage-lines.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Acts } from './acts.js';
import { ChooseVehicle } from './choose-vehicle.js';
import { Concerns } from './concerns.js';
import { Fixes } from './fixes.js';
import { LastEntries } from './last-entries.js';
import { type MyVehicle, myVehicle } from './my-vehicle.js';
import { MyQuestions, QuestionsOfVisit } from './questions.js';
import { useAwake } from './use-awake.js';
import { CautionRows, ClockFace, Handovers, VehicleTop } from './vehicle-top.js';
import { Wheels, WheelsMissing } from './wheels.js';
import { Holds, Lines, Parts } from './work-lists.js';

type AtProps = {
  readonly board: Board;
  readonly now: number;
  readonly mine: MyVehicle & { readonly visit: NonNullable<MyVehicle['visit']> };
  readonly onGoToClock: () => void;
};

/** The screen at one vehicle. */
const AtVehicle = ({ board, now, mine, onGoToClock }: AtProps): ReactElement => {
  const { person } = useSignedIn();
  const { visit, clock } = mine;
  const homeBayId = board.tables.person.get(person.id)?.homeBayId ?? undefined;
  const all = { board, visit, now };
  const bay = visit.place?.kind === 'bay' ? board.tables.bay.get(visit.place.bayId ?? '') : undefined;
  return (
    <div className="hf-bay">
      <div className="hf-bay-first">
        <VehicleTop {...all} />
        <CautionRows {...all} />
        {bay !== undefined && <OutageLines board={board} bay={bay} now={now} />}
        <WheelsMissing board={board} visit={visit} />
        <Handovers visit={visit} />
        <Concerns board={board} visit={visit} />
        <FlagLines board={board} jobId={visit.job.id} />
      </div>
      <div className="hf-bay-do">
        <ClockFace {...all} clock={clock} onGo={onGoToClock} />
        <Acts
          {...all}
          clock={clock?.jobId === visit.job.id ? clock : undefined}
          isClocked={clock !== undefined}
          homeBayId={homeBayId}
        />
      </div>
      <div className="hf-bay-know">
        <Holds {...all} />
        <Lines {...all} />
        <Parts {...all} />
        <Wheels {...all} />
        <Fixes board={board} visit={visit} />
        <QuestionsOfVisit {...all} />
        <LastEntries now={now} />
      </div>
    </div>
  );
};

const MyBayScreen = (): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const now = useNow();
  const { person } = useSignedIn();
  const [chosen, setChosen] = useState<string | null>(null);
  const [isChoosing, setChoosing] = useState(false);
  useAwake();
  const mine = myVehicle(board, person.id, chosen, now);
  const { visit } = mine;
  const choose = (jobId: string | null): void => {
    setChosen(jobId);
    setChoosing(false);
  };
  const acts =
    isChoosing || mine.isChosen ? (
      <Button
        onPress={() => {
          choose(null);
        }}
      >
        {t('bay.mine')}
      </Button>
    ) : (
      <Button
        onPress={() => {
          setChoosing(true);
        }}
      >
        {t('bay.another')}
      </Button>
    );
  return (
    <>
      {visit === undefined || isChoosing ? (
        <>
          <ScreenHead
            heading={t('bay.choose')}
            {...(visit === undefined ? { under: t('bay.chooseUnder') } : { acts })}
          />
          <MyQuestions board={board} now={now} />
          <Cards />
          <ForgottenClocks board={board} now={now} ofOthers={false} />
          <ChooseVehicle board={board} now={now} onChoose={choose} />
          <LastEntries now={now} />
        </>
      ) : (
        <>
          <ScreenHead heading={t('bay.heading')} acts={acts} />
          <MyQuestions board={board} now={now} />
          <Cards />
          <ForgottenClocks board={board} now={now} ofOthers={false} />
          <AtVehicle
            board={board}
            now={now}
            mine={{ ...mine, visit }}
            onGoToClock={() => {
              choose(mine.clock?.jobId ?? null);
            }}
          />
        </>
      )}
    </>
  );
};

export const MyBay = (): ReactElement => (
  <SignedIn>
    <MyBayScreen />
  </SignedIn>
);
