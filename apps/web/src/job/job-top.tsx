import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { CautionForbids } from '../pieces/caution-forbids.js';
import { CautionForm, EndCautionForm } from '../pieces/caution-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { LiftingPointsForm, namedPoints } from '../pieces/lifting-points-form.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { useSentences } from '../pieces/sentences.js';
import { ClearFlagForm } from '../pieces/small-turn-forms.js';
import { cautionWords, shownCautions } from '../pieces/vehicle-head.js';
import { useText } from '../text/use-text.js';
import { CautionMark } from '../ui/marks/caution-mark.js';
import { doneLines, sectionId } from './job-parties.js';

type Props = { readonly view: JobView };

/** What was recorded although it should not have happened, until somebody has looked at it. */
const JobFlags = ({ view }: Props): ReactElement | null => {
  const { t, format } = useText();
  const sentences = useSentences();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  if (view.flags.length === 0) return null;
  const open = view.flags.filter((flag) => flag.clearedAt === null);
  const over = view.flags.filter((flag) => flag.clearedAt !== null);
  return (
    <div className="hf-line-group">
      <h3>{t('job.flags')}</h3>
      <Entries>
        {open.map((flag) => (
          <Entry
            key={flag.id}
            id={`flag-${flag.id}`}
            acts={
              <Opener command="clearFlag" label={t('job.clearFlag')} about={sentences.flag(flag)}>
                {(close) => (
                  <ClearFlagForm flag={flag} sentence={sentences.flag(flag)} jobId={view.job.id} onClose={close} />
                )}
              </Opener>
            }
          >
            <p>{sentences.flag(flag)}</p>
          </Entry>
        ))}
      </Entries>
      <SmallList
        lines={over.map((flag) =>
          t('job.flagCleared', {
            flag: sentences.flag(flag),
            name: people.get(flag.clearedById ?? '')?.name ?? '',
            at: format.moment(Date.parse(flag.clearedAt ?? flag.effectiveAt), now),
            words: flag.clearWords ?? 'empty',
          }),
        )}
      />
    </div>
  );
};

/** Cautions first: nobody reads on without them. */
export const JobCautions = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const people = board.tables.person;
  const now = useNow(60_000);
  const points = namedPoints(board, view.job.id).at(-1);
  const open = view.cautions.filter((caution) => caution.endedAt === null);
  const kinds = new Map(shownCautions(open, t).map((shown) => [shown.id, shown.kind]));
  const done = doneLines(view);
  return (
    <Part
      id={sectionId('cautions')}
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
              <>
                {caution.code === 'liftingPoint' && view.job.endedAt === null && (
                  <Opener command="nameLiftingPoints" label={t('points.open')} about={view.vehicle.plate}>
                    {(close) => <LiftingPointsForm jobId={view.job.id} vehicle={view.vehicle} onClose={close} />}
                  </Opener>
                )}
                <Opener command="endCaution" label={t('job.endCaution')} about={cautionWords(caution, t)}>
                  {(close) => <EndCautionForm caution={caution} doneLines={done} jobId={view.job.id} onClose={close} />}
                </Opener>
              </>
            }
          >
            <p className="hf-entry-line hf-entry-title">
              <CautionMark kind={kinds.get(caution.id) ?? 'caution'} title={null} size={28} />
              {cautionWords(caution, t)}
            </p>
            <CautionForbids code={caution.code} />
            {caution.code === 'liftingPoint' && points !== undefined && (
              <p>
                {t('points.named', { words: points.words })}{' '}
                <span className="hf-quiet hf-small">
                  {t('points.namedBy', { at: format.moment(points.effectiveAt, now) })}
                </span>
              </p>
            )}
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
      <JobFlags view={view} />
    </Part>
  );
};
