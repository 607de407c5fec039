import { rowsOf } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { SmallList } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { TextArea } from '../ui/fields/field.js';
import { newConcern, type Draft } from './draft.js';

type StepProps = { readonly draft: Draft; readonly onChange: (part: Partial<Draft>) => void };

/** What was told and agreed when the visit was booked; it stays. */
const ToldAlready = ({ draft: { booked } }: Pick<StepProps, 'draft'>): ReactElement | null => {
  const { t } = useText();
  const rows = rowsOf(useBoard());
  if (booked === null) return null;
  const told = rows.list('concern', (one) => one.jobId === booked.id).sort((a, b) => a.position - b.position);
  const lines = rows.list('workLine', (one) => one.jobId === booked.id).sort((a, b) => a.position - b.position);
  return (
    <>
      {told.length > 0 && (
        <div className="hf-known">
          <h2>{t('checkIn.toldAlready')}</h2>
          <SmallList
            lines={told.map((one) => [one.words, one.conditions].filter((words) => words !== null).join(' · '))}
          />
        </div>
      )}
      {lines.length > 0 && (
        <div className="hf-known">
          <h2>{t('checkIn.linesAlready')}</h2>
          <SmallList lines={lines.map((one) => one.title)} />
        </div>
      )}
    </>
  );
};

/** What the customer reports, each with the conditions under which it appears. */
export const StepConcerns = ({ draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  const { concerns } = draft;
  const change = (id: string, part: { words?: string; conditions?: string }): void => {
    onChange({ concerns: concerns.map((one) => (one.id === id ? { ...one, ...part } : one)) });
  };
  return (
    <>
      <ToldAlready draft={draft} />
      {concerns.map((concern, at) => (
        <fieldset key={concern.id} className="hf-group">
          <legend>{t('checkIn.concern', { number: at + 1 })}</legend>
          <TextArea
            label={t('checkIn.concernWords')}
            value={concern.words}
            onChange={(words) => {
              change(concern.id, { words });
            }}
            rows={2}
            autoFocus={at === 0}
          />
          <TextArea
            label={t('checkIn.conditions')}
            hint={t('checkIn.conditionsHint')}
            value={concern.conditions}
            onChange={(conditions) => {
              change(concern.id, { conditions });
            }}
            rows={2}
          />
          {concerns.length > 1 && (
            <div className="hf-row">
              <Button
                size="small"
                look="plain"
                onPress={() => {
                  onChange({ concerns: concerns.filter((one) => one.id !== concern.id) });
                }}
              >
                {t('checkIn.dropConcern', { number: at + 1 })}
              </Button>
            </div>
          )}
        </fieldset>
      ))}
      <div className="hf-row">
        <Button
          onPress={() => {
            onChange({ concerns: [...concerns, newConcern()] });
          }}
        >
          {t('checkIn.addConcern')}
        </Button>
      </div>
    </>
  );
};
