import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { AgeTicks } from '../ui/marks/age-ticks.js';
import { CautionMark } from '../ui/marks/caution-mark.js';
import { ForecastSteps } from '../ui/marks/forecast-steps.js';
import { Patch } from '../ui/marks/patch.js';
import { PromiseFlag } from '../ui/marks/promise-flag.js';
import { Knot, StitchedLine } from '../ui/marks/stitched-line.js';
import { WaitMark } from '../ui/marks/wait-mark.js';
import { MeaningList, type Meaning } from './meaning-list.js';

const ages = [1, 2, 3, 4] as const;

export const MarkMeanings = (): ReactElement => {
  const { t } = useText();
  const meanings: readonly Meaning[] = [
    {
      key: 'caution',
      mark: <CautionMark kind="caution" title={t('mark.caution')} size={28} />,
      words: t('style.meaningCaution'),
    },
    {
      key: 'highVoltage',
      mark: (
        <>
          <CautionMark kind="highVoltage" title={null} size={28} /> <b className="hf-small">{t('mark.highVoltage')}</b>
        </>
      ),
      words: t('style.meaningHighVoltage'),
    },
    { key: 'within', mark: <WaitMark waiting="within" title={t('wait.within')} />, words: t('style.meaningWithin') },
    { key: 'past', mark: <WaitMark waiting="past" title={t('wait.past')} />, words: t('style.meaningPast') },
    {
      key: 'stitched',
      mark: <StitchedLine title={t('mark.stitched')} length={96} />,
      words: t('style.meaningStitched'),
    },
    { key: 'knot', mark: <Knot title={t('mark.knot')} length={96} />, words: t('style.meaningKnot') },
    { key: 'patch', mark: <Patch count={2} title={t('mark.patch', { count: 2 })} />, words: t('style.meaningPatch') },
    {
      key: 'age',
      mark: ages.map((count) => <AgeTicks key={count} count={count} title={t(`age.${count}`)} />),
      words: t('style.meaningAge'),
    },
    {
      key: 'forecast',
      mark: <ForecastSteps title={t('mark.forecast')} size={28} />,
      words: t('style.meaningForecast'),
    },
    { key: 'promise', mark: <PromiseFlag title={t('mark.promise')} size={28} />, words: t('style.meaningPromise') },
  ];
  return <MeaningList meanings={meanings} />;
};
