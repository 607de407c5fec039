import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { Entries, Entry, SmallList } from '../pieces/part.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import type { Blocker } from './blocker.js';
import { BlockerActs } from './blocker-acts.js';

/** A concern is told by its number; its words stand below. */
const aboutConcern = (view: JobView, { way }: Blocker): string[] =>
  way?.table === 'concern' ? view.concerns.filter((one) => one.id === way.id).map((one) => one.words) : [];

/** Where the row stands that is the way out; without one, the job. */
const placeOf = (view: JobView, { way }: Blocker): string => {
  if (way === null) return jobPath(view.job.id);
  if (way.table === 'vehicle') return vehiclePath(way.id);
  return way.table === 'job' ? jobPath(way.id) : `${jobPath(view.job.id)}#${way.table}-${way.id}`;
};

/** Everything in the way, all at once. */
export const Blockers = (props: { readonly view: JobView; readonly blockers: readonly Blocker[] }): ReactElement => {
  const { t } = useText();
  const { view, blockers } = props;
  return (
    <Entries>
      {blockers.map((blocker) => (
        <Entry
          key={`${blocker.code} ${blocker.way?.id ?? ''}`}
          acts={
            <>
              <BlockerActs view={view} way={blocker.way} />
              <Link className="hf-button hf-button-small hf-look-plain" href={placeOf(view, blocker)}>
                {t('handBack.goThere')}
              </Link>
            </>
          }
        >
          <p className="hf-entry-title">{blocker.sentence}</p>
          <SmallList lines={aboutConcern(view, blocker)} />
        </Entry>
      ))}
    </Entries>
  );
};
