import type { SheetContent } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { wheelWords } from '../pieces/wheel-words.js';
import { useText } from '../text/use-text.js';
import { SheetSection } from './sheet-section.js';

type Props = { readonly content: SheetContent };

/** Wheels that were off: the torque as it was recorded, where its value comes from, and who tightened them. */
export const SheetWheels = ({ content }: Props): ReactElement | null => {
  const { t, format } = useText();
  if (content.wheels.length === 0) return null;
  return (
    <SheetSection heading={t('sheet.wheels')}>
      <ul>
        {content.wheels.map((wheel) => {
          const { torque, torqueUnit, torqueSource, sourceWords, tool } = wheel;
          const source = [torqueSource === null ? null : t(`word.torqueSource.${torqueSource}`), sourceWords];
          const words =
            torque === null || torqueUnit === null
              ? [t(wheel.isOn ? 'sheet.wheelNoTorque' : 'sheet.wheelOff')]
              : [
                  t('wheel.torque', { torque: format.decimal(torque), unit: t(`word.torqueUnit.${torqueUnit}`) }),
                  t('wheel.from', { source: source.filter((one) => one !== null).join(', ') }),
                  ...(tool === null ? [] : [t('wheel.with', { tool })]),
                  ...(wheel.by === '' ? [] : [wheel.by]),
                ];
          return <li key={wheel.position}>{`${wheelWords(wheel.position, t)}: ${words.join(', ')}`}</li>;
        })}
      </ul>
      <p className="hf-small">{t('sheet.wheelsDefer')}</p>
    </SheetSection>
  );
};

/** Work by other firms on this visit. */
export const SheetSublets = ({ content }: Props): ReactElement | null => {
  const { t } = useText();
  if (content.sublets.length === 0) return null;
  return (
    <SheetSection heading={t('sheet.sublets')}>
      <ul>
        {content.sublets.map((one, at) => (
          <li key={`${String(at)} ${one.firm}`}>
            {[one.title ?? one.component ?? t(`word.subletForm.${one.form}`), one.firm].join(', ')}
            {one.state === 'underWay' && `, ${t('sheet.subletUnderWay')}`}
          </li>
        ))}
      </ul>
    </SheetSection>
  );
};

/** Released unfinished: first on the page, with the words of who let it go. */
export const SheetRelease = ({ content }: Props): ReactElement | null => {
  const { t } = useText();
  const { release } = content;
  if (release === null) return null;
  return (
    <SheetSection heading={t('sheet.release')}>
      <p className="hf-entry-title">{release.words}</p>
      <p className="hf-small">{t('sheet.releaseBy', { name: release.by })}</p>
    </SheetSection>
  );
};
