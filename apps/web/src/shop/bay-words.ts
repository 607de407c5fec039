import type { Row } from '@holdfast/domain';

import type { Text } from '../text/use-text.js';

type Spec = Row<'baySpec'>;

/** What stands in a bay, with what each lift grips, and which piece is out of use by the facts of the bay. */
export const equipmentWords = (spec: Spec, { t }: Pick<Text, 't'>): string =>
  spec.equipment
    .map(({ kind, inUse, grips }) => {
      const name =
        grips === null
          ? t(`word.equipment.${kind}`)
          : t(`shop.bay.grips.${grips}`, { kind: t(`word.equipment.${kind}`) });
      return inUse ? name : t('shop.bay.notInUse', { kind: name });
    })
    .join(', ');

/** Rated capacity in the unit of the plate; null where none is known. */
export const capacityWords = (spec: Spec, { format }: Pick<Text, 'format'>): string | null =>
  spec.capacity === null ? null : `${format.decimal(spec.capacity)} ${spec.capacityUnit}`;

/** What fits in, one phrase each. */
export const limitWords = (spec: Spec, { t, format }: Text): string[] =>
  [
    spec.maxLengthMm === null ? null : t('shop.bay.limit.length', { mm: format.number(spec.maxLengthMm) }),
    spec.maxHeightMm === null ? null : t('shop.bay.limit.height', { mm: format.number(spec.maxHeightMm) }),
    spec.maxWheelbaseMm === null ? null : t('shop.bay.limit.wheelbase', { mm: format.number(spec.maxWheelbaseMm) }),
  ].filter((limit) => limit !== null);
