import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { AttemptForm } from '../pieces/attempt-form.js';
import { CauseForm, ChangeCauseForm } from '../pieces/cause-forms.js';
import { useFindingWords } from '../pieces/finding-entry.js';
import { Opener } from '../pieces/form-sheet.js';
import { OutcomeForm } from '../pieces/outcome-form.js';
import { useRoadTests } from '../pieces/out-words.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { StrikeOpener } from '../pieces/strike-form.js';
import { useText } from '../text/use-text.js';
import { concernNames, type JobCause, type JobConcern, lastReading, sectionId } from './job-parties.js';

type Props = { readonly view: JobView };
type ConcernProps = Props & { readonly concern: JobConcern };

const Attempts = ({ view, concern }: ConcernProps): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const attempts = view.attempts.filter((attempt) => attempt.concernId === concern.id);
  if (attempts.length === 0) return <p className="hf-small hf-quiet">{t('job.noAttempts')}</p>;
  return (
    <ol className="hf-attempts" aria-label={t('job.attempts')}>
      {attempts.map((attempt) => {
        const test = view.places.find((place) => place.id === attempt.placeId);
        const facts = [
          format.moment(Date.parse(attempt.effectiveAt), now),
          people.get(attempt.byId ?? '')?.name,
          attempt.odometer === null ? undefined : format.distance(attempt.odometer, attempt.odometerUnit),
          test === undefined ? undefined : t('job.onRoadTest', { at: format.moment(Date.parse(test.fromAt), now) }),
        ].filter((one) => one !== undefined);
        return (
          <li key={attempt.id} className="hf-attempt" id={`attempt-${attempt.id}`}>
            <strong className="hf-attempt-answer">{t(attempt.appeared ? 'job.appeared' : 'job.notAppeared')}</strong>
            <div>
              <p>{attempt.conditions}</p>
              {attempt.words !== null && <p className="hf-small">{attempt.words}</p>}
              <p className="hf-small hf-quiet">{facts.join(' · ')}</p>
              <StrikeOpener
                entry={{ table: 'attempt', id: attempt.id, version: attempt.version }}
                about={attempt.conditions}
              />
            </div>
          </li>
        );
      })}
    </ol>
  );
};

const CauseLine = ({ view, cause, concern }: ConcernProps & { readonly cause: JobCause }): ReactElement => {
  const { t } = useText();
  const others = view.concerns.filter((one) => one.id !== concern.id && cause.concernIds.includes(one.id));
  // Its anchor stands once on the page, with the first concern that it explains.
  const isFirst = view.concerns.find((one) => cause.concernIds.includes(one.id))?.id === concern.id;
  return (
    <div className="hf-cause" {...(isFirst ? { id: `cause-${cause.id}` } : {})}>
      <div>
        <p>
          <strong>{t('job.causeIs', { certainty: cause.certainty })}</strong> {cause.words}
        </p>
        {others.length > 0 && (
          <p className="hf-small hf-quiet">
            {t('job.alsoExplains', { concerns: others.map((one) => one.words).join('; ') })}
          </p>
        )}
      </div>
      {view.job.endedAt === null && (
        <Opener command="changeCause" label={t('job.changeCause')} look="plain" about={cause.words}>
          {(close) => (
            <ChangeCauseForm cause={cause} jobId={view.job.id} concerns={concernNames(view)} onClose={close} />
          )}
        </Opener>
      )}
    </div>
  );
};

const useOutcome = (): ((concern: JobConcern) => string) => {
  const { t, format } = useText();
  const now = useNow(60_000);
  return (concern) => {
    if (concern.outcome === null || concern.outcomeAt === null) return t('job.noOutcome');
    const values = {
      at: format.moment(Date.parse(concern.outcomeAt), now),
      outcome: t(`word.outcome.${concern.outcome}`),
    };
    const said = [concern.outcomeConditions, concern.outcomeWords].filter((words) => words !== null).join('; ');
    return said === '' ? t('job.outcomeIs', values) : t('job.outcomeUnder', { ...values, conditions: said });
  };
};

const ConcernActs = ({ view, concern }: ConcernProps): ReactElement => {
  const { t } = useText();
  const jobId = view.job.id;
  const roadTests = useRoadTests(useBoard(), useNow(60_000))(jobId);
  return (
    <>
      <Opener command="recordAttempt" label={t('job.attempt')} about={concern.words}>
        {(close) => (
          <AttemptForm
            jobId={jobId}
            concerns={view.concerns}
            concernId={concern.id}
            roadTests={roadTests}
            unit={view.job.odometerUnit}
            last={lastReading(view)}
            onClose={close}
          />
        )}
      </Opener>
      <Opener command="recordCause" label={t('job.addCause')} about={concern.words}>
        {(close) => <CauseForm jobId={jobId} concerns={concernNames(view)} concernId={concern.id} onClose={close} />}
      </Opener>
      <Opener command="recordConcernOutcome" label={t('job.outcome')} about={concern.words}>
        {(close) => <OutcomeForm concern={concern} jobId={jobId} onClose={close} />}
      </Opener>
    </>
  );
};

const ConcernEntry = ({ view, concern }: ConcernProps): ReactElement => {
  const { t } = useText();
  const found = useFindingWords();
  const outcome = useOutcome();
  const causes = view.causes.filter((cause) => cause.concernIds.includes(concern.id));
  const findings = view.findings.filter((finding) => finding.concernId === concern.id);
  return (
    <Entry
      id={`concern-${concern.id}`}
      acts={view.job.endedAt === null && <ConcernActs view={view} concern={concern} />}
    >
      <h3 className="hf-concern-words">{concern.words}</h3>
      <p className="hf-small">
        {concern.conditions === null ? t('job.noConditions') : t('job.appears', { conditions: concern.conditions })}
      </p>
      <Attempts view={view} concern={concern} />
      <SmallList
        lines={findings.map((finding) => t('job.foundHere', { words: `${finding.place}, ${found(finding)}` }))}
      />
      {causes.length === 0 ? (
        <p className="hf-small hf-quiet">{t('job.noCause')}</p>
      ) : (
        causes.map((cause) => <CauseLine key={cause.id} view={view} concern={concern} cause={cause} />)
      )}
      <p className={concern.outcome === null ? 'hf-small hf-quiet' : 'hf-entry-title'}>{outcome(concern)}</p>
    </Entry>
  );
};

/** What the customer reports, the tries to make it appear, what brings it about, what became of it. */
export const JobConcerns = ({ view }: Props): ReactElement => {
  const { t } = useText();
  return (
    <Part heading={t('job.concerns')} id={sectionId('concerns')}>
      {view.concerns.length === 0 && <p className="hf-quiet">{t('job.noConcerns')}</p>}
      <Entries>
        {view.concerns.map((concern) => (
          <ConcernEntry key={concern.id} view={view} concern={concern} />
        ))}
      </Entries>
    </Part>
  );
};
