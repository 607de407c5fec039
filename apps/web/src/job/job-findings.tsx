import type { JobView, VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useRead } from '../live/reads.js';
import { FindingEntry } from '../pieces/finding-entry.js';
import { FindingForm } from '../pieces/finding-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Part } from '../pieces/part.js';
import { PhotoForm, PhotoList } from '../pieces/photo-form.js';
import { useText } from '../text/use-text.js';
import { concernNames } from './job-parties.js';

/** Findings with the earlier one at the same place, and the photos that belong to none of them. */
export const JobFindings = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const { vehicle, job, findings, photos } = view;
  // Earlier visits are asked for only where something was found on this one.
  const path = findings.length > 0 ? `/api/vehicles/${vehicle.id}` : null;
  const history = useRead<VehicleView>(path, [`vehicle:${vehicle.id}`]).data;
  const before = (placeKey: string, at: string) =>
    (history?.findings ?? [])
      .filter((one) => one.placeKey === placeKey && one.jobId !== job.id && one.effectiveAt < at)
      .slice(0, 1);
  return (
    <Part
      heading={t('job.findings')}
      acts={
        <>
          <Opener command="addFinding" label={t('job.addFinding')}>
            {(close) => <FindingForm jobId={job.id} concerns={concernNames(view)} onClose={close} />}
          </Opener>
          <Opener command="attachPhoto" label={t('job.addPhoto')}>
            {(close) => <PhotoForm jobId={job.id} onClose={close} />}
          </Opener>
        </>
      }
    >
      {findings.length === 0 && <p className="hf-quiet">{t('job.noFindings')}</p>}
      <Entries>
        {findings.map((finding) => (
          <FindingEntry
            key={finding.id}
            finding={finding}
            earlier={before(finding.placeKey, finding.effectiveAt)}
            photos={photos}
            acts={
              <Opener command="attachPhoto" label={t('job.photo')} about={finding.place}>
                {(close) => <PhotoForm jobId={job.id} of={{ findingId: finding.id }} onClose={close} />}
              </Opener>
            }
          />
        ))}
      </Entries>
      <PhotoList photos={photos.filter((photo) => photo.findingId === null && photo.temporaryFixId === null)} />
    </Part>
  );
};
