import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { askedOf, openParts } from '../job/job-parties.js';
import { FollowUpForm } from '../pieces/follow-up-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { GoAheadForm } from '../pieces/go-ahead-form.js';
import { CarryOverForm, DropForm, FinishForm } from '../pieces/line-end-forms.js';
import { useText } from '../text/use-text.js';

type Props = { readonly view: JobView; readonly id: string };

/** How a line comes to its end on this visit: done, carried over, answered, put off, dropped. */
export const LineActs = ({ view, id }: Props): ReactElement | null => {
  const { t } = useText();
  const line = view.lines.find((one) => one.id === id);
  if (line === undefined) return null;
  const jobId = view.job.id;
  const started = line.startedAt !== null || line.progress !== 'planned';
  const parts = openParts(view).filter((part) => view.partLines.some((one) => one.id === part.id && one.lineId === id));
  return (
    <>
      {started && (
        <Opener command="finishLine" label={t('handBack.finish')} about={line.title}>
          {(close) => <FinishForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {started && (
        <Opener command="carryOverLine" label={t('handBack.carryOver')} about={line.title}>
          {(close) => <CarryOverForm line={line} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {!started && line.goAhead === 'withCustomer' && (
        <Opener command="recordGoAhead" label={t('handBack.goAhead')} about={line.title}>
          {(close) => <GoAheadForm line={line} jobId={jobId} asked={askedOf(view)?.name ?? null} onClose={close} />}
        </Opener>
      )}
      {!started && (
        <Opener command="addFollowUp" label={t('handBack.followUp')} about={line.title}>
          {(close) => (
            <FollowUpForm
              vehicleId={view.vehicle.id}
              jobId={jobId}
              of={{ lineId: line.id }}
              first={{ kind: 'deferred', title: line.title }}
              parts={parts}
              tickedParts={parts.map((part) => part.id)}
              onClose={close}
            />
          )}
        </Opener>
      )}
      <Opener command="dropLine" label={t('handBack.drop')} about={line.title}>
        {(close) => <DropForm line={line} jobId={jobId} onClose={close} />}
      </Opener>
    </>
  );
};
