import type { JobView } from '@holdfast/contract';
import type { leavesBy } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import type { ReleaseList } from './release-list.js';

export type Leaves = (typeof leavesBy)[number];
/** Handed back whole, or released unfinished. */
export type Door = 'handBack' | 'release';

type DoorsProps = {
  readonly door: Door;
  readonly leaves: Leaves;
  readonly onDoor: (door: Door) => void;
  readonly onLeaves: (leaves: Leaves) => void;
};

/** By which of the two doors it leaves, and how. The second one is for owner and manager. */
export const Doors = ({ door, leaves, onDoor, onLeaves }: DoorsProps): ReactElement => {
  const { t } = useText();
  const may = useMay();
  return (
    <Part heading={t('handBack.leaves')}>
      {may.command('releaseUnfinished') ? (
        <Choice
          label={t('handBack.door')}
          size="large"
          value={door}
          onChange={onDoor}
          options={(['handBack', 'release'] as const).map((value) => ({ value, label: t(`handBack.door.${value}`) }))}
        />
      ) : (
        <p className="hf-quiet hf-small">{t('handBack.releaseLead')}</p>
      )}
      <Choice
        label={t('handBack.leavesBy')}
        size="large"
        value={leaves}
        onChange={onLeaves}
        options={(['road', 'transporter'] as const).map((value) => ({ value, label: t(`word.leaves.${value}`) }))}
      />
    </Part>
  );
};

/** What a release makes by itself, told before anybody lets the vehicle go. */
export const BecomesOutstanding = ({ list }: { readonly list: ReleaseList }): ReactElement => {
  const { t } = useText();
  const { followUps, notTried } = list;
  return (
    <Part heading={t('handBack.becomes')} under={t('handBack.becomesUnder')}>
      <div className="hf-release-list">
        {followUps.length === 0 ? (
          <p>{t('handBack.becomesNothing')}</p>
        ) : (
          <div>
            <p className="hf-entry-title">{t('handBack.becomesFollowUps', { count: followUps.length })}</p>
            <ul>
              {followUps.map((title) => (
                <li key={title}>{title}</li>
              ))}
            </ul>
          </div>
        )}
        {notTried.length > 0 && (
          <div>
            <p className="hf-entry-title">{t('handBack.becomesNotTried')}</p>
            <ul>
              {notTried.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </div>
        )}
        <p className="hf-small hf-quiet">{t('handBack.becomesDefer')}</p>
      </div>
    </Part>
  );
};

/** Sheets of this visit that were marked void when its hand-back was undone. */
export const VoidSheets = ({ view }: { readonly view: JobView }): ReactElement | null => {
  const { t, format } = useText();
  const gone = view.sheets.filter((sheet) => sheet.voidedWords !== null);
  if (gone.length === 0) return null;
  return (
    <ul className="hf-flags">
      {gone.map((sheet) => {
        const at = Date.parse(sheet.effectiveAt);
        return (
          <li key={sheet.id}>
            {t('handBack.voidSheet', {
              at: `${format.date(at)}, ${format.time(at)}`,
              words: sheet.voidedWords ?? '',
            })}
          </li>
        );
      })}
    </ul>
  );
};
