import { useEffect, useRef, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { LiftWords } from '../pieces/lift-words.js';
import { MovedHow } from '../pieces/moved-how.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { useEscape, type PickedState } from './picked.js';

/** Says what is picked, stays in sight while its place is chosen, and asks how it is moved when it does not roll. */
export const PickedBar = ({ picked }: { readonly picked: PickedState }): ReactElement => {
  const { t } = useText();
  const { visit, putBack, placing, swapping, movedHow } = picked;
  useEscape(visit !== undefined, putBack);
  const start = useRef<HTMLDivElement>(null);
  const jobId = visit?.job.id;
  // Whatever was picked further down, the bays it may go to come into sight.
  useEffect(() => {
    const top = start.current?.getBoundingClientRect().top ?? 0;
    if (jobId !== undefined && top < 0) start.current?.scrollIntoView({ block: 'start' });
  }, [jobId]);
  return (
    <>
      <div ref={start} />
      <div className="hf-picked-place" role="status">
        {visit !== undefined && (
          <div className="hf-picked-bar">
            <p>
              <strong>{t('floor.picked', { plate: visit.vehicle.plate })}</strong>{' '}
              <span className="hf-picked-keys">{t('floor.pickedKeys')}</span>
            </p>
            <Button onPress={putBack}>{t('floor.putBack')}</Button>
            <LiftWords reminder={placing.reminder} />
            {!visit.vehicle.rolls && <MovedHow state={movedHow} />}
            <Refusal problem={placing.sending.problem ?? swapping.sending.problem} jobId={visit.job.id} />
          </div>
        )}
      </div>
    </>
  );
};
