import type { VehicleView } from '@holdfast/contract';
import { distanceUnits, readingSources } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { NumberField } from '../pieces/number-field.js';
import { optionsOf } from '../pieces/options.js';
import { Tick } from '../pieces/ticks.js';
import { wholeOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import type { Draft } from './draft.js';

type StepProps = {
  readonly view: VehicleView;
  readonly draft: Draft;
  readonly onChange: (part: Partial<Draft>) => void;
};

const Odometer = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t, format } = useText();
  const last = view.odometerReadings.filter((reading) => reading.value !== null).at(-1);
  const value = wholeOf(draft.odometer);
  const lower =
    typeof value === 'number' && last?.value != null && last.unit === draft.odometerUnit && value < last.value;
  return (
    <>
      <Choice
        label={t('checkIn.odometerSource')}
        value={draft.odometerSource}
        onChange={(odometerSource) => {
          onChange({ odometerSource });
        }}
        options={optionsOf(readingSources, (one) => t(`word.reading.${one}`))}
      />
      {draft.odometerSource !== 'notReadable' && (
        <NumberField
          label={t('checkIn.odometer')}
          value={draft.odometer}
          onChange={(odometer) => {
            onChange({ odometer });
          }}
          unit={draft.odometerUnit}
          units={optionsOf(distanceUnits, (one) => t(`word.unit.${one}`))}
          onUnit={(odometerUnit) => {
            onChange({ odometerUnit });
          }}
          hint={t(`word.unit.${draft.odometerUnit}`)}
          {...(last?.value == null
            ? {}
            : {
                last: {
                  value: String(last.value),
                  words: t('checkIn.odometerLast', { day: format.date(Date.parse(last.effectiveAt)) }),
                },
              })}
          wrong={value === null ? t('piece.wrong.whole') : lower ? t('checkIn.odometerLower') : null}
        />
      )}
    </>
  );
};

/** Odometer, key, spot, promise, and how the vehicle moves. */
export const StepStands = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  return (
    <>
      <Odometer view={view} draft={draft} onChange={onChange} />
      <div className="hf-pair">
        <Field
          label={t('checkIn.keyTag')}
          value={draft.keyTag}
          onChange={(keyTag) => {
            onChange({ keyTag });
          }}
          code
        />
        <Field
          label={t('checkIn.yardSpot')}
          value={draft.yardSpot}
          onChange={(yardSpot) => {
            onChange({ yardSpot });
          }}
          code
        />
      </div>
      <DateTimeField
        label={t('checkIn.promised')}
        value={draft.promisedAt}
        onChange={(promisedAt) => {
          onChange({ promisedAt });
        }}
      />
      <Field
        label={t('checkIn.boardNote')}
        hint={t('checkIn.boardNoteHint')}
        value={draft.boardNote}
        onChange={(boardNote) => {
          onChange({ boardNote: boardNote.slice(0, 40) });
        }}
      />
      <div>
        <Tick
          label={t('checkIn.waitsHere')}
          value={draft.waitsHere}
          onChange={(waitsHere) => {
            onChange({ waitsHere });
          }}
        />
        <Tick
          label={t('checkIn.rolls')}
          value={draft.rolls}
          onChange={(rolls) => {
            onChange({ rolls });
          }}
        />
        <Tick
          label={t('checkIn.mayBeDriven')}
          value={draft.mayBeDriven}
          onChange={(mayBeDriven) => {
            onChange({ mayBeDriven });
          }}
        />
      </div>
    </>
  );
};
