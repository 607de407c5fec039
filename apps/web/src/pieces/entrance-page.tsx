import { useEffect, type ReactElement, type ReactNode } from 'react';

import './entrance.css';
import './pieces.css';
import { useText } from '../text/use-text.js';
import { LocaleSwitch } from '../theme/locale-switch.js';
import { ThemeSwitch } from '../theme/theme-switch.js';

type EntranceProps = { readonly heading: string; readonly under: string; readonly children: ReactNode };

/** The page before anybody is signed in: the name on a band of ink, one column, and at its foot how this device looks. */
export const EntrancePage = ({ heading, under, children }: EntranceProps): ReactElement => {
  const { t, locale } = useText();
  useEffect(() => {
    document.documentElement.lang = locale;
    document.title = t('shell.title', { screen: heading });
  }, [t, locale, heading]);
  return (
    <div className="hf-entrance">
      <header className="hf-entrance-band">
        <span className="hf-entrance-name">{t('shell.name')}</span>
      </header>
      <main className="hf-entrance-main">
        <h1>{heading}</h1>
        <p className="hf-quiet">{under}</p>
        {children}
      </main>
      <footer className="hf-entrance-foot">
        <ThemeSwitch />
        <LocaleSwitch />
      </footer>
    </div>
  );
};
