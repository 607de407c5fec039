import type { Visit } from '@holdfast/board';
import type { ReactElement } from 'react';

import './placing.css';
import { useMay } from '../live/session.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import type { Moving } from './placing.js';
import { useSentences } from './sentences.js';
import type { Swapping } from './use-swapping.js';

type SwapPlaceProps = {
  readonly visit: Visit;
  readonly other: Visit;
  readonly moving: Moving;
  readonly swapping: Swapping;
};

/** What a taken spot says to a picked vehicle that stands in a bay: change places, or why not. */
export const SwapPlace = ({ visit, other, moving, swapping }: SwapPlaceProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const sentences = useSentences();
  if (!may.command('swapBays')) return null;
  const pair = { visit, other, moving };
  const against = swapping.against(pair);
  const plateOf = (jobId: unknown): string => (jobId === other.job.id ? other.vehicle.plate : visit.vehicle.plate);
  if (against.length > 0) {
    const lines = against.map((one) => `${plateOf(one.facts['jobId'])}: ${sentences.refusal(one)}`);
    return (
      <div className="hf-spot-place">
        <ul className="hf-spot-why" aria-label={t('swap.why', { plate: other.vehicle.plate })}>
          <li>{t('swap.why', { plate: other.vehicle.plate })}</li>
          {[...new Set(lines)].map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </div>
    );
  }
  return (
    <div className="hf-spot-place">
      <Button
        look="ink"
        command="swapBays"
        isPending={swapping.sending.pending}
        {...(swapping.asksLoad(pair) ? { follows: t('floor.asksLoad') } : {})}
        onPress={() => {
          swapping.swap(pair);
        }}
      >
        {t('swap.act', { plate: other.vehicle.plate })}
      </Button>
    </div>
  );
};
