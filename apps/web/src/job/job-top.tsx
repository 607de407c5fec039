import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { CautionForm, EndCautionForm } from '../pieces/caution-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { OutcomeForm } from '../pieces/outcome-form.js';
import { useSentences } from '../pieces/sentences.js';
import { cautionWords, shownCautions } from '../pieces/vehicle-head.js';
import { useText } from '../text/use-text.js';
import { CautionMark } from '../ui/marks/caution-mark.js';
import { doneLines } from './job-parties.js';

type Props = { readonly view: JobView };

/** Cautions first: nobody reads on without them. */
export const JobCautions = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const open = view.cautions.filter((caution) => caution.endedAt === null);
  const kinds = new Map(shownCautions(open, t).map((shown) => [shown.id, shown.kind]));
  const done = doneLines(view);
  const sentences = useSentences();
  return (
    <Part
      heading={t('job.cautions')}
      acts={
        <Opener command="addCaution" label={t('job.addCaution')}>
          {(close) => (
            <CautionForm
              vehicleId={view.vehicle.id}
              jobId={view.job.endedAt === null ? view.job.id : null}
              onClose={close}
            />
          )}
        </Opener>
      }
    >
      {open.length === 0 && <p className="hf-quiet">{t('job.noCautions')}</p>}
      <Entries>
        {open.map((caution) => (
          <Entry
            key={caution.id}
            id={`caution-${caution.id}`}
            acts={
              <Opener command="endCaution" label={t('job.endCaution')} about={cautionWords(caution, t)}>
                {(close) => <EndCautionForm caution={caution} doneLines={done} jobId={view.job.id} onClose={close} />}
              </Opener>
            }
          >
            <p className="hf-entry-line hf-entry-title">
              <CautionMark kind={kinds.get(caution.id) ?? 'caution'} title={null} size={28} />
              {cautionWords(caution, t)}
            </p>
            <SmallList
              lines={[
                [
                  caution.standing ? t('job.standing') : t('job.ofVisit'),
                  t('job.openedBy', {
                    name: people.get(caution.openedById)?.name ?? '',
                    at: format.moment(Date.parse(caution.effectiveAt), now),
                  }),
                ].join(', '),
              ]}
            />
          </Entry>
        ))}
      </Entries>
      {view.flags.length > 0 && (
        <div>
          <h3>{t('job.flags')}</h3>
          <SmallList lines={view.flags.map((flag) => sentences.flag(flag))} />
        </div>
      )}
    </Part>
  );
};

/** What the customer reports, what was found about it, what became of it. */
export const JobConcerns = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const outcomeOf = (concern: JobView['concerns'][number]): string => {
    if (concern.outcome === null || concern.outcomeAt === null) return t('job.noOutcome');
    const values = {
      at: format.moment(Date.parse(concern.outcomeAt), now),
      outcome: t(`word.outcome.${concern.outcome}`),
    };
    const said = [concern.outcomeConditions, concern.outcomeWords].filter((words) => words !== null).join('; ');
    return said === '' ? t('job.outcomeIs', values) : t('job.outcomeUnder', { ...values, conditions: said });
  };
  return (
    <Part heading={t('job.concerns')}>
      <Entries>
        {view.concerns.map((concern) => (
          <Entry
            key={concern.id}
            id={`concern-${concern.id}`}
            acts={
              view.job.endedAt === null && (
                <Opener command="recordConcernOutcome" label={t('job.outcome')} about={concern.words}>
                  {(close) => <OutcomeForm concern={concern} jobId={view.job.id} onClose={close} />}
                </Opener>
              )
            }
          >
            <p className="hf-entry-title">{concern.words}</p>
            <SmallList
              lines={[
                concern.conditions === null
                  ? t('job.noConditions')
                  : t('job.appears', { conditions: concern.conditions }),
                ...view.findings
                  .filter((finding) => finding.concernId === concern.id)
                  .map((finding) =>
                    t('job.cause', {
                      words: [finding.place, finding.words ?? t(`word.finding.${finding.kind}`)].join(', '),
                    }),
                  ),
                outcomeOf(concern),
              ]}
            />
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};
