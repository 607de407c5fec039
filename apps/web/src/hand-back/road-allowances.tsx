import type { JobView } from '@holdfast/contract';
import { tierOf } from '@holdfast/domain';
import type { ReactElement } from 'react';

import type { JobFix } from '../job/job-parties.js';
import { useSignedIn } from '../live/session.js';
import { FixEntry } from '../pieces/fix-entry.js';
import { Entries, Part } from '../pieces/part.js';
import { Tick } from '../pieces/ticks.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';

/** What owner or manager says for each tier-1 fix by its id, and whether the receiver has signed for it here. */
export type Allowances = Readonly<Record<string, { readonly words: string; readonly receiverSigned: boolean }>>;

/** Fixes on a tier-1 system that have not ended: by road each is allowed and signed for by itself (rule 7). */
export const tierOneFixes = (view: JobView): JobFix[] =>
  view.temporaryFixes.filter((fix) => fix.state !== 'ended' && tierOf(fix.system) === 1);

/** Ids of the fixes that have both: words and the receiver's signature. */
export const allowedFixes = (allowances: Allowances): string[] =>
  Object.entries(allowances)
    .filter(([, one]) => one.words.trim() !== '' && one.receiverSigned)
    .map(([id]) => id);

type Props = {
  readonly view: JobView;
  readonly receivedHow: 'there' | 'telephone';
  readonly allowances: Allowances;
  readonly onChange: (allowances: Allowances) => void;
};

/** By road with a tier-1 fix: the usual caution first, then the words of owner or manager and the receiver's signature. */
export const RoadAllowances = ({ view, receivedHow, allowances, onChange }: Props): ReactElement => {
  const { t } = useText();
  const { person } = useSignedIn();
  const lead = person.roles.some((role) => role === 'owner' || role === 'manager');
  return (
    <Part heading={t('handBack.temporary')} under={t('handBack.temporaryUnder')}>
      {tierOneFixes(view).map((fix) => {
        const said = allowances[fix.id] ?? { words: '', receiverSigned: false };
        const change = (part: Partial<typeof said>): void => {
          onChange({ ...allowances, [fix.id]: { ...said, ...part } });
        };
        return (
          <div key={fix.id} className="hf-allowance">
            <div className="hf-care">
              <h3>{t('handBack.care', { system: t(`word.system.${fix.system}`) })}</h3>
              <p>{t('handBack.careWords')}</p>
              <p className="hf-small">{t('handBack.careDefer')}</p>
            </div>
            <Entries>
              <FixEntry fix={fix} />
            </Entries>
            {lead ? (
              <>
                <TextArea
                  label={t('handBack.allow', { name: person.name })}
                  value={said.words}
                  onChange={(words) => {
                    change({ words });
                  }}
                  rows={2}
                />
                <Tick
                  label={t('handBack.signed', { place: fix.place })}
                  value={said.receiverSigned}
                  onChange={(receiverSigned) => {
                    change({ receiverSigned });
                  }}
                />
                {receivedHow === 'telephone' && <p className="hf-entry-title">{t('handBack.notByTelephone')}</p>}
              </>
            ) : (
              <p className="hf-entry-title">{t('handBack.allowLead')}</p>
            )}
          </div>
        );
      })}
    </Part>
  );
};
