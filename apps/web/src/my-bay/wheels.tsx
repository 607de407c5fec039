import { rowsOf, type Board, type Visit } from '@holdfast/board';
import { wheelsNow, wheelsOff, wheelsUntorqued } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { AxleLadder } from '../pieces/axle-ladder.js';
import { axlesOf, rungsOf } from '../pieces/axle-ladder-model.js';
import { Opener } from '../pieces/form-sheet.js';
import { Part, SmallList } from '../pieces/part.js';
import { openLines } from '../pieces/visit-lists.js';
import { WheelsForm } from '../pieces/wheel-forms.js';
import { useWheelWords, wheelWords } from '../pieces/wheel-words.js';
import { useText } from '../text/use-text.js';
import { CautionMark } from '../ui/marks/caution-mark.js';

type WheelsProps = { readonly board: Board; readonly visit: Visit };

/** Wheels without a torque record, large, with what records it; and how many are off. Nothing while there are none. */
export const WheelsMissing = ({ board, visit }: WheelsProps): ReactElement | null => {
  const { t } = useText();
  const rows = rowsOf(board);
  const { id: jobId } = visit.job;
  const untorqued = wheelsUntorqued(rows, jobId);
  const off = wheelsOff(rows, jobId);
  if (untorqued.length + off.length === 0) return null;
  const places = (wheels: typeof off): string => wheels.map(({ position }) => wheelWords(position, t)).join('; ');
  return (
    <section className="hf-bay-wheels-missing" aria-label={t('bay.wheels.missing')}>
      <CautionMark kind="caution" title={null} size={36} />
      <div>
        {untorqued.length > 0 && (
          <p>
            <strong>{t('bay.wheels.noTorque', { count: untorqued.length })}</strong>
            <span>{places(untorqued)}</span>
          </p>
        )}
        {off.length > 0 && (
          <p>
            <strong>{t('bay.wheels.off', { count: off.length })}</strong>
            <span>{places(off)}</span>
          </p>
        )}
      </div>
      {untorqued.length > 0 && (
        <Opener size="normal" look="ink" label={t('bay.wheels.record')} command="recordTorque">
          {(close) => (
            <WheelsForm
              board={board}
              jobId={jobId}
              vehicle={visit.vehicle}
              lines={openLines(visit)}
              first="tightened"
              onClose={close}
            />
          )}
        </Opener>
      )}
    </section>
  );
};

/** The wheels that were off on this visit, on their ladder, and what is recorded of each. */
export const Wheels = ({ board, visit, now }: WheelsProps & { readonly now: number }): ReactElement | null => {
  const { t } = useText();
  const words = useWheelWords(now);
  const wheels = wheelsNow(rowsOf(board), visit.job.id);
  if (wheels.length === 0) return null;
  const recorded = wheels.map(({ position }) => position);
  return (
    <Part heading={t('bay.wheels')}>
      <AxleLadder
        rungs={rungsOf(axlesOf(visit.vehicle.kind, recorded), recorded)}
        wheels={wheels}
        withSpare={recorded.includes('spare')}
      />
      <SmallList lines={wheels.map((wheel) => `${wheelWords(wheel.position, t)}: ${words(wheel)}`)} />
    </Part>
  );
};
