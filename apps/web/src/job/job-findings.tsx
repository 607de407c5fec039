import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { FindingEntry } from '../pieces/finding-entry.js';
import { FindingForm } from '../pieces/finding-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Part } from '../pieces/part.js';
import { PhotoForm, PhotoList } from '../pieces/photo-form.js';
import { StrikeOpener } from '../pieces/strike-form.js';
import { useText } from '../text/use-text.js';
import { concernNames, sectionId } from './job-parties.js';

/** Findings with the earlier one at the same place, and the photos that belong to none of them. */
export const JobFindings = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const { job, findings, photos } = view;
  return (
    <Part
      id={sectionId('findings')}
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
            earlier={finding.earlier === null ? [] : [finding.earlier]}
            photos={photos}
            acts={
              <>
                <Opener command="attachPhoto" label={t('job.photo')} about={finding.place}>
                  {(close) => <PhotoForm jobId={job.id} of={{ findingId: finding.id }} onClose={close} />}
                </Opener>
                <StrikeOpener
                  entry={{ table: 'finding', id: finding.id, version: finding.version }}
                  about={finding.place}
                />
              </>
            }
          />
        ))}
      </Entries>
      <PhotoList photos={photos.filter((photo) => photo.findingId === null && photo.temporaryFixId === null)} />
    </Part>
  );
};
