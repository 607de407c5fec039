import { calendarOfBoard, rowsOf } from '@holdfast/board';
import { type CautionCode, specOn } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { AttemptForm } from '../pieces/attempt-form.js';
import { CauseForm } from '../pieces/cause-forms.js';
import { CautionForm } from '../pieces/caution-forms.js';
import { FindingForm } from '../pieces/finding-form.js';
import { FixForm } from '../pieces/fix-form.js';
import { OdometerForm } from '../pieces/odometer-form.js';
import { useRoadTests } from '../pieces/out-words.js';
import { TakeOutOfUseForm } from '../pieces/outage-forms.js';
import { PhotoForm } from '../pieces/photo-form.js';
import { BackFromRoadTestForm, RoadTestForm } from '../pieces/road-test-forms.js';
import { RollsForm } from '../pieces/rolls-form.js';
import { WheelsForm } from '../pieces/wheel-forms.js';
import { useText } from '../text/use-text.js';
import { ActButton, namedOf, type ActsProps } from './act-button.js';
import { IntoBaySheet, ToYardSheet } from './move-sheets.js';

/** What is seen, measured, tried and read on the vehicle. */
export const SeenActs = (props: ActsProps): ReactElement => {
  const { board, visit, now } = props;
  const { concernRows, concerns } = namedOf(props);
  const roadTests = useRoadTests(board, now)(visit.job.id);
  const { job, vehicle } = visit;
  const { id: jobId, odometerUnit: unit } = job;
  const last = job.odometerIn === null ? null : { value: job.odometerIn, unit };
  return (
    <>
      <ActButton act="finding" text="bay.act.finding" command="addFinding">
        {(close) => <FindingForm jobId={jobId} concerns={concerns} onClose={close} />}
      </ActButton>
      <ActButton act="photo" text="bay.act.photo" command="attachPhoto">
        {(close) => <PhotoForm jobId={jobId} onClose={close} />}
      </ActButton>
      {concerns.length > 0 && (
        <>
          <ActButton act="attempt" text="bay.act.attempt" command="recordAttempt">
            {(close) => (
              <AttemptForm
                jobId={jobId}
                concerns={concernRows}
                roadTests={roadTests}
                unit={unit}
                last={last}
                onClose={close}
              />
            )}
          </ActButton>
          <ActButton act="cause" text="bay.act.cause" command="recordCause">
            {(close) => <CauseForm jobId={jobId} concerns={concerns} onClose={close} />}
          </ActButton>
        </>
      )}
      <ActButton act="odometer" text="bay.act.odometer" command="recordOdometer">
        {(close) => (
          <OdometerForm
            vehicleId={vehicle.id}
            plate={vehicle.plate}
            jobId={jobId}
            unit={unit}
            last={last}
            onClose={close}
          />
        )}
      </ActButton>
    </>
  );
};

const tags: readonly CautionCode[] = ['doNotStart', 'doNotMove'];
const voltageStates: readonly CautionCode[] = ['highVoltageLive', 'highVoltageDead'];

/** What others have to mind: wheels, cautions, tags, the state of high voltage, temporary fixes. */
export const FixActs = (props: ActsProps): ReactElement => {
  const { t } = useText();
  const { board, visit } = props;
  const { lines, followUps } = namedOf(props);
  const { id: jobId } = visit.job;
  const { vehicle } = visit;
  const hasVoltage =
    vehicle.drive === 'electric' ||
    vehicle.drive === 'hybrid' ||
    visit.cautions.some(({ code }) => code === 'electricDrive' || voltageStates.includes(code));
  const of = { vehicleId: vehicle.id, jobId };
  return (
    <>
      <ActButton act="wheels" text="bay.act.wheels" command="recordWheelOff">
        {(close) => <WheelsForm board={board} jobId={jobId} vehicle={vehicle} lines={lines} onClose={close} />}
      </ActButton>
      <ActButton act="fix" text="bay.act.fix" command="addTemporaryFix">
        {(close) => <FixForm jobId={jobId} lines={lines} followUps={followUps} onClose={close} />}
      </ActButton>
      <ActButton act="caution" text="bay.act.caution" command="addCaution">
        {(close) => <CautionForm {...of} onClose={close} />}
      </ActButton>
      <ActButton act="tag" text="bay.act.tag" command="addCaution">
        {(close) => (
          <CautionForm
            {...of}
            only={{ codes: tags, heading: t('tag.heading'), label: t('tag.which') }}
            onClose={close}
          />
        )}
      </ActButton>
      {hasVoltage && (
        <ActButton act="voltage" text="bay.act.voltage" command="addCaution">
          {(close) => (
            <CautionForm
              {...of}
              only={{ codes: voltageStates, heading: t('tag.highVoltage'), label: t('tag.which') }}
              onClose={close}
            />
          )}
        </ActButton>
      )}
    </>
  );
};

/** Where it goes: on a road test and back, into a bay, to the yard; and whether it moves at all. */
export const MoveActs = ({ board, visit, now, homeBayId }: ActsProps): ReactElement => {
  const { vehicle, place } = visit;
  const { id: jobId } = visit.job;
  const bay = place?.kind === 'bay' ? board.tables.bay.get(place.bayId ?? '') : undefined;
  return (
    <>
      {place?.kind === 'roadTest' ? (
        <ActButton act="roadTest" text="bay.act.roadTestBack" command="returnFromRoadTest" look="ink">
          {(close) => <BackFromRoadTestForm board={board} visit={visit} onClose={close} />}
        </ActButton>
      ) : (
        <ActButton act="roadTest" text="bay.act.roadTest" command="takeOnRoadTest">
          {(close) => <RoadTestForm board={board} visit={visit} now={now} onClose={close} />}
        </ActButton>
      )}
      <ActButton act="bay" text="bay.act.intoBay" command="takeIntoBay">
        {(close) => <IntoBaySheet board={board} visit={visit} now={now} homeBayId={homeBayId} onClose={close} />}
      </ActButton>
      {place?.kind === 'bay' && (
        <ActButton act="yard" text="bay.act.toYard" command="moveToYard">
          {(close) => <ToYardSheet visit={visit} onClose={close} />}
        </ActButton>
      )}
      <ActButton act="rolls" text="bay.act.rolls" command="recordRolls">
        {(close) => <RollsForm vehicle={vehicle} jobId={jobId} onClose={close} />}
      </ActButton>
      {bay !== undefined && (
        <ActButton act="outage" text="bay.act.outage" command="takeOutOfUse">
          {(close) => (
            <TakeOutOfUseForm
              board={board}
              bay={bay}
              spec={specOn(rowsOf(board), bay.id, calendarOfBoard(board).dateOf(now))}
              onClose={close}
            />
          )}
        </ActButton>
      )}
    </>
  );
};
