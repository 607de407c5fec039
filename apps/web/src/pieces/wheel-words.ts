import type { Row } from '@holdfast/domain';

import { useText, type Text, type Translate } from '../text/use-text.js';

/** "axle 2, left, outer wheel": a place as `wheelPosition` writes it, in words. */
export const wheelWords = (position: string, t: Translate): string => {
  const [, axle, side, ring] = /^([1-9])([LR])([IO]?)$/.exec(position) ?? [];
  if (axle === undefined || side === undefined) return t('wheel.spare');
  return t('wheel.at', { axle, side, ring: ring === undefined || ring === '' ? 'single' : ring });
};

type Torqued = Pick<
  Row<'wheelRecord'>,
  'torque' | 'torqueUnit' | 'torqueSource' | 'sourceWords' | 'tool' | 'offAt' | 'onAt'
> & { readonly torquedAt: number | null };

/** "120 N·m", as it was recorded. */
export const torqueWords = ({ torque, torqueUnit }: Pick<Torqued, 'torque' | 'torqueUnit'>, { t, format }: Text) =>
  torque === null || torqueUnit === null
    ? t('wheel.noValue')
    : t('wheel.torque', { torque: format.decimal(torque), unit: t(`word.torqueUnit.${torqueUnit}`) });

/** What is recorded of a wheel, as one phrase: off since, on without a torque, or value, source and tool. Instants are epoch ms. */
export const useWheelWords = (now: number): ((wheel: Torqued) => string) => {
  const text = useText();
  const { t, format } = text;
  return (wheel) => {
    if (wheel.torquedAt !== null) {
      const source = wheel.torqueSource === null ? null : t(`word.torqueSource.${wheel.torqueSource}`);
      const from = [source, wheel.sourceWords].filter((one) => one !== null).join(', ');
      return [
        torqueWords(wheel, text),
        ...(from === '' ? [] : [t('wheel.from', { source: from })]),
        ...(wheel.tool === null ? [] : [t('wheel.with', { tool: wheel.tool })]),
        format.moment(wheel.torquedAt, now),
      ].join(', ');
    }
    if (wheel.onAt !== null) return t('wheel.onNoTorque', { at: format.moment(wheel.onAt, now) });
    return wheel.offAt === null ? t('wheel.on') : t('wheel.offSince', { at: format.moment(wheel.offAt, now) });
  };
};
