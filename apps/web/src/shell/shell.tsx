import { useEffect, type ReactElement, type ReactNode } from 'react';
import { Link } from 'wouter';

import './shell.css';
import { MyPresence } from '../presence/my-presence.js';
import { useText } from '../text/use-text.js';
import { UndoBar } from '../ui/undo-bar.js';
import { BottomBar } from './bottom-bar.js';
import { HearingBar } from './hearing-bar.js';
import { NavLinks } from './nav-links.js';
import { PersonCorner } from './person-corner.js';
import { useShell } from './shell-state.js';

/** Header, ways to the screens, one's own presence and the live bar around one screen. */
export const Shell = ({ children }: { readonly children: ReactNode }): ReactElement => {
  const { t, locale } = useText();
  const { shopName, hearing } = useShell();
  useEffect(() => {
    document.documentElement.lang = locale;
  }, [locale]);
  useEffect(() => {
    document.documentElement.toggleAttribute('data-stale', hearing.kind === 'stale');
  }, [hearing.kind]);
  return (
    <div className="hf-shell">
      <a className="hf-skip" href="#screen">
        {t('shell.skip')}
      </a>
      <header className="hf-header">
        <Link className="hf-shop-name" href="/">
          {shopName ?? t('shell.name')}
        </Link>
        <nav className="hf-nav" aria-label={t('shell.screens')}>
          <NavLinks />
        </nav>
        <MyPresence />
        <PersonCorner />
      </header>
      <HearingBar />
      <main id="screen" className="hf-screen" tabIndex={-1}>
        {children}
      </main>
      <UndoBar />
      <BottomBar />
    </div>
  );
};
