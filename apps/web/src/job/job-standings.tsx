import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries } from '../pieces/part.js';
import { StandingEntry } from '../pieces/standing-entry.js';
import { GiveStandingForm } from '../pieces/standing-forms.js';
import { useText } from '../text/use-text.js';
import { askedOf, leftOf } from './job-parties.js';

/** What the customer agreed to in advance, with what is left of it on this visit. */
export const JobStandings = ({ view }: { readonly view: JobView }): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const { job, standing } = view;
  const { customerId } = job;
  const isOpen = job.endedAt === null && customerId !== null;
  if (standing.length === 0 && !(isOpen && may.command('giveStandingGoAhead'))) return null;
  return (
    <div className="hf-line-group">
      <div className="hf-part-head">
        <h3>{t('line.standing')}</h3>
        {isOpen && (
          <Opener command="giveStandingGoAhead" label={t('line.giveStanding')} look="plain">
            {(close) => (
              <GiveStandingForm
                customerId={customerId}
                vehicleId={view.vehicle.id}
                jobId={job.id}
                asked={askedOf(view)?.name ?? null}
                onClose={close}
              />
            )}
          </Opener>
        )}
      </div>
      {standing.length === 0 ? (
        <p className="hf-quiet hf-small">{t('line.noStanding')}</p>
      ) : (
        <Entries>
          {standing.map((one) => (
            <StandingEntry key={one.id} standing={one} use={{ used: one.used, left: leftOf(one) }} jobId={job.id} />
          ))}
        </Entries>
      )}
    </div>
  );
};
