import { useState, type ReactElement } from 'react';

import type { Role } from '@holdfast/domain';

import type { NavScreen } from '../screen-paths.js';
import { screens } from '../screens.js';
import { useText } from '../text/use-text.js';
import { LocaleSwitch } from '../theme/locale-switch.js';
import { ThemeSwitch } from '../theme/theme-switch.js';
import { Button } from '../ui/button.js';
import { Sheet } from '../ui/layers/dialog.js';
import { NavLinks } from './nav-links.js';
import { useShell } from './shell-state.js';

/** The three screens each role goes to most, at the foot of a phone. The first role that has a row counts. */
const closest: Readonly<Record<Role, readonly NavScreen[]>> = {
  technician: ['bay', 'floor', 'waiting'],
  partsClerk: ['parts', 'waiting', 'floor'],
  desk: ['desk', 'ready', 'floor'],
  manager: ['floor', 'desk', 'waiting'],
  owner: ['floor', 'desk', 'bayTime'],
  wallScreen: ['wall', 'floor', 'ready'],
};

/** On a phone: the closest screens and a sheet with all of them, the look of this device and the way out. */
export const BottomBar = (): ReactElement => {
  const { t } = useText();
  const { person, signOut } = useShell();
  const [isOpen, setOpen] = useState(false);
  const close = (): void => {
    setOpen(false);
  };
  const near = closest[person?.roles[0] ?? 'manager'].filter((name) => name in screens);
  return (
    <nav className="hf-bottom-bar" aria-label={t('shell.closest')}>
      <NavLinks only={near} />
      <Button
        look="plain"
        onPress={() => {
          setOpen(true);
        }}
      >
        {t('shell.all')}
      </Button>
      <Sheet isOpen={isOpen} onClose={close} heading={t('shell.all')}>
        {person !== null && <p className="hf-quiet">{t('shell.signedInAs', { name: person.name })}</p>}
        <nav className="hf-all-screens" aria-label={t('shell.screens')}>
          <NavLinks onFollow={close} />
        </nav>
        <ThemeSwitch />
        <LocaleSwitch />
        {signOut !== null && <Button onPress={signOut}>{t('shell.signOut')}</Button>}
      </Sheet>
    </nav>
  );
};
