import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { FixEntry } from '../pieces/fix-entry.js';
import { FixForm } from '../pieces/fix-form.js';
import { EndFixForm, SecondCheckForm } from '../pieces/fix-turn-forms.js';
import { FollowUpEntry } from '../pieces/follow-up-entry.js';
import { FollowUpForm } from '../pieces/follow-up-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Part } from '../pieces/part.js';
import { PhotoForm, PhotoList } from '../pieces/photo-form.js';
import { useText } from '../text/use-text.js';
import { doneLines, type JobFix, openFollowUps, openLines, openParts, sectionId } from './job-parties.js';

type Props = { readonly view: JobView };

const FixActs = ({ view, fix }: Props & { readonly fix: JobFix }): ReactElement | null => {
  const { t } = useText();
  if (fix.state === 'ended') return null;
  const jobId = view.job.id;
  const openFollowUp = view.followUps.some((one) => one.id === fix.followUpId && one.state === 'open');
  return (
    <>
      {fix.state === 'on' && (
        <Opener command="recordSecondCheck" label={t('job.secondCheck')} about={fix.place}>
          {(close) => <SecondCheckForm fix={fix} jobId={jobId} onClose={close} />}
        </Opener>
      )}
      {!openFollowUp && (
        <Opener command="addFollowUp" label={t('job.followUp')} about={fix.place}>
          {(close) => (
            <FollowUpForm
              vehicleId={view.vehicle.id}
              jobId={jobId}
              of={{ temporaryFixId: fix.id }}
              first={{ kind: 'permanentRepair', title: fix.endedByWhat }}
              parts={openParts(view)}
              onClose={close}
            />
          )}
        </Opener>
      )}
      <Opener command="attachPhoto" label={t('job.photo')} about={fix.place}>
        {(close) => <PhotoForm jobId={jobId} of={{ temporaryFixId: fix.id }} onClose={close} />}
      </Opener>
      <Opener command="endTemporaryFix" label={t('job.endFix')} look="plain" about={fix.place}>
        {(close) => <EndFixForm fix={fix} jobId={jobId} doneLines={doneLines(view)} onClose={close} />}
      </Opener>
    </>
  );
};

/** Temporary fixes on the vehicle, with their limits and second checks. */
export const JobFixes = ({ view }: Props): ReactElement => {
  const { t } = useText();
  return (
    <Part
      id={sectionId('fixes')}
      heading={t('job.fixes')}
      acts={
        view.job.endedAt === null && (
          <Opener command="addTemporaryFix" label={t('job.addFix')}>
            {(close) => (
              <FixForm jobId={view.job.id} lines={openLines(view)} followUps={openFollowUps(view)} onClose={close} />
            )}
          </Opener>
        )
      }
    >
      {view.temporaryFixes.length === 0 && <p className="hf-quiet">{t('job.noFixes')}</p>}
      <Entries>
        {view.temporaryFixes.map((fix) => (
          <FixEntry key={fix.id} fix={fix} acts={<FixActs view={view} fix={fix} />} />
        ))}
      </Entries>
      <PhotoList photos={view.photos.filter((photo) => photo.temporaryFixId !== null)} />
    </Part>
  );
};

/** What stays outstanding on the vehicle, or was made so by this visit. */
export const JobFollowUps = ({ view }: Props): ReactElement => {
  const { t } = useText();
  return (
    <Part
      id={sectionId('followUps')}
      heading={t('job.followUps')}
      acts={
        <Opener command="addFollowUp" label={t('job.addFollowUp')}>
          {(close) => (
            <FollowUpForm
              vehicleId={view.vehicle.id}
              jobId={view.job.id}
              parts={openParts(view)}
              followUps={openFollowUps(view)}
              onClose={close}
            />
          )}
        </Opener>
      }
    >
      {view.followUps.length === 0 && <p className="hf-quiet">{t('job.noFollowUps')}</p>}
      <Entries>
        {view.followUps.map((followUp) => (
          <FollowUpEntry key={followUp.id} followUp={followUp} />
        ))}
      </Entries>
    </Part>
  );
};
