import type { JobView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { LogList } from '../pieces/log-list.js';
import { Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { sectionId, titlesOf } from './job-parties.js';

const shownFirst = 12;

/** Everything recorded on this visit, newest first. */
export const JobLog = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const [all, setAll] = useState(false);
  const entries = all ? view.log : view.log.slice(0, shownFirst);
  return (
    <Part id={sectionId('log')} heading={t('job.log')}>
      <LogList entries={entries} titles={titlesOf(view)} />
      {view.log.length > entries.length && (
        <div className="hf-row">
          <Button
            size="small"
            onPress={() => {
              setAll(true);
            }}
          >
            {t('job.logAll', { count: view.log.length })}
          </Button>
        </div>
      )}
    </Part>
  );
};
