import { useEffect, type ReactElement, type ReactNode } from 'react';
import { Redirect, useLocation } from 'wouter';

import { pathOf } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { useBoardStore } from './board-store.js';
import { loadSession, useSession } from './session.js';

/** What is inside is drawn once somebody is signed in and the first snapshot is here. */
export function SignedIn({ children }: { readonly children: ReactNode }): ReactElement {
  const { t } = useText();
  const { state } = useSession();
  const [location] = useLocation();
  const ready = useBoardStore((store) => store.board !== null);
  useEffect(() => {
    if (state.kind === 'asking') void loadSession();
  }, [state.kind]);
  if (state.kind === 'nobody') return <Redirect to={`${pathOf.signIn}?then=${encodeURIComponent(location)}`} replace />;
  if (state.kind === 'unreachable') return <p className="hf-quiet">{t('live.unreachable')}</p>;
  if (state.kind === 'asking' || !ready) return <p className="hf-quiet">{t('shell.loading')}</p>;
  return <>{children}</>;
}
