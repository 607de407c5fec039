import { equipmentKinds, massUnits } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { optionsOf } from '../pieces/options.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf, wholeOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import type { BayTyped } from './bay-facts.js';

type FieldsProps = { readonly typed: BayTyped; readonly onChange: (part: Partial<BayTyped>) => void };

const grips = ['points', 'wheels'] as const;
const lifting: readonly string[] = ['twoPostLift', 'fourPostLift', 'scissorLift', 'jackAndStands'];
/** What such a thing usually grips, until somebody says otherwise. */
const usualGrip = (kind: string): 'points' | 'wheels' | null => {
  if (!lifting.includes(kind)) return null;
  return kind === 'fourPostLift' ? 'wheels' : 'points';
};

/** What stands in the bay, each in or out of use, and what a lift grips. */
export const EquipmentFields = ({ typed, onChange }: FieldsProps): ReactElement => {
  const { t } = useText();
  return (
    <fieldset className="hf-group">
      <legend>{t('shop.bay.equipment')}</legend>
      {equipmentKinds.map((kind) => {
        const item = typed.equipment[kind];
        const name = t(`word.equipment.${kind}`);
        const { [kind]: _left, ...others } = typed.equipment;
        return (
          <div key={kind} className="hf-equipment">
            <Tick
              label={name}
              value={item !== undefined}
              onChange={(there) => {
                onChange({
                  equipment: there ? { ...others, [kind]: { inUse: true, grips: usualGrip(kind) } } : others,
                });
              }}
            />
            {item !== undefined && (
              <div className="hf-equipment-more">
                <Tick
                  label={t('shop.bay.itemInUse', { kind: name })}
                  value={item.inUse}
                  onChange={(inUse) => {
                    onChange({ equipment: { ...typed.equipment, [kind]: { ...item, inUse } } });
                  }}
                />
                {item.grips !== null && (
                  <Choice
                    label={t('shop.bay.gripsWhat')}
                    value={item.grips}
                    onChange={(what) => {
                      onChange({ equipment: { ...typed.equipment, [kind]: { ...item, grips: what } } });
                    }}
                    options={optionsOf(grips, (what) => t(`shop.bay.gripWord.${what}`))}
                  />
                )}
              </div>
            )}
          </div>
        );
      })}
    </fieldset>
  );
};

/** Rated capacity as on the plate, and what fits in. */
export const LimitFields = ({ typed, onChange }: FieldsProps): ReactElement => {
  const { t } = useText();
  const length = (key: 'maxLengthMm' | 'maxHeightMm' | 'maxWheelbaseMm'): ReactElement => (
    <Field
      label={t(`shop.bay.field.${key}`)}
      value={typed[key]}
      onChange={(value) => {
        onChange({ [key]: value });
      }}
      wrong={wholeOf(typed[key]) === null ? t('piece.wrong.whole') : null}
    />
  );
  return (
    <fieldset className="hf-group">
      <legend>{t('shop.bay.whatFits')}</legend>
      <div className="hf-pair">
        <Field
          label={t('shop.bay.field.capacity')}
          hint={t('shop.bay.capacityHint')}
          value={typed.capacity}
          onChange={(capacity) => {
            onChange({ capacity });
          }}
          wrong={decimalOf(typed.capacity) === null ? t('piece.wrong.amount') : null}
        />
        <Choice
          label={t('pad.unit')}
          value={typed.capacityUnit}
          onChange={(capacityUnit) => {
            onChange({ capacityUnit });
          }}
          options={optionsOf(massUnits, (unit) => unit)}
        />
      </div>
      <p className="hf-small">{t('shop.bay.liftWords')}</p>
      {length('maxLengthMm')}
      {length('maxHeightMm')}
      {length('maxWheelbaseMm')}
    </fieldset>
  );
};

/** The last inspection of the lift, and the interval that the shop follows. */
export const InspectionFields = ({ typed, onChange }: FieldsProps): ReactElement => {
  const { t } = useText();
  return (
    <fieldset className="hf-group">
      <legend>{t('shop.bay.inspection')}</legend>
      <DateField
        label={t('shop.bay.field.inspectedOn')}
        value={typed.inspectedOn}
        onChange={(inspectedOn) => {
          onChange({ inspectedOn });
        }}
      />
      {typed.inspectedOn !== '' && (
        <Choice
          label={t('shop.bay.field.outcome')}
          value={typed.inspectionOutcome}
          onChange={(inspectionOutcome) => {
            onChange({ inspectionOutcome });
          }}
          options={optionsOf(['passed', 'failed'] as const, (outcome) => t(`shop.bay.outcome.${outcome}`))}
        />
      )}
      <Field
        label={t('shop.bay.field.interval')}
        value={typed.inspectionIntervalMonths}
        onChange={(inspectionIntervalMonths) => {
          onChange({ inspectionIntervalMonths });
        }}
        wrong={wholeOf(typed.inspectionIntervalMonths) === null ? t('piece.wrong.whole') : null}
      />
    </fieldset>
  );
};
