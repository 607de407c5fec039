// style-page/ hides the legend of the client: every mark, texture and control with its meaning, from the same components
// as the screens. It guarantees that what stands here is what is drawn elsewhere.
import type { ReactElement, ReactNode } from 'react';

import './style-page.css';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { LocaleSwitch } from '../theme/locale-switch.js';
import { ThemeSwitch } from '../theme/theme-switch.js';
import { ControlSamples } from './control-samples.js';
import { MarkMeanings } from './mark-meanings.js';
import { NumberSamples } from './number-samples.js';
import { ReasonMeanings, SentMeanings } from './reason-meanings.js';
import { SampleBoard } from './sample-board.js';
import { TextureMeanings } from './texture-meanings.js';

const Section = (props: { heading: string; under?: string; children: ReactNode }): ReactElement => (
  <section className="hf-style-section">
    <h2>{props.heading}</h2>
    {props.under !== undefined && <p className="hf-quiet hf-measure">{props.under}</p>}
    {props.children}
  </section>
);

export const StylePage = (): ReactElement => {
  const { t } = useText();
  return (
    <>
      <ScreenHead heading={t('style.heading')} under={t('style.under')} />
      <div className="hf-row hf-style-switches">
        <ThemeSwitch />
        <LocaleSwitch />
      </div>
      <Section heading={t('style.strips')} under={t('style.stripsUnder')}>
        <SampleBoard />
      </Section>
      <div className="hf-style-pair">
        <Section heading={t('style.textures')}>
          <TextureMeanings />
        </Section>
        <Section heading={t('style.marks')}>
          <MarkMeanings />
        </Section>
      </div>
      <div className="hf-style-pair">
        <Section heading={t('style.reasons')}>
          <ReasonMeanings />
        </Section>
        <Section heading={t('style.sent')}>
          <SentMeanings />
        </Section>
      </div>
      <Section heading={t('style.controls')}>
        <ControlSamples />
      </Section>
      <Section heading={t('style.numbers')}>
        <NumberSamples />
      </Section>
    </>
  );
};
