import { useState, type ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { LocaleSwitch } from '../theme/locale-switch.js';
import { ThemeSwitch } from '../theme/theme-switch.js';
import { Button } from '../ui/button.js';
import { Dialog } from '../ui/layers/dialog.js';
import { SentMark } from '../ui/marks/sent-mark.js';
import { useShell } from './shell-state.js';

/** Who is signed in, what needs them, how this device looks and speaks, and the way out. */
export const PersonCorner = (): ReactElement => {
  const { t } = useText();
  const { person, needsYou, signOut } = useShell();
  const [isOpen, setOpen] = useState(false);
  return (
    <div className="hf-person">
      {needsYou > 0 && (
        <span className="hf-needs-you hf-small">
          <SentMark state="needsYou" title={null} size={18} />
          <span className="hf-needs-you-count" aria-hidden="true">
            {needsYou}
          </span>
          <span className="hf-needs-you-words">{t('shell.needsYou', { count: needsYou })}</span>
        </span>
      )}
      {person !== null && <span className="hf-person-name">{person.name}</span>}
      <Button
        size="small"
        look="plain"
        {...(person === null ? {} : { label: `${person.name}: ${t('shell.device')}` })}
        onPress={() => {
          setOpen(true);
        }}
      >
        {person?.name ?? t('shell.device')}
      </Button>
      {signOut !== null && (
        <Button size="small" onPress={signOut}>
          {t('shell.signOut')}
        </Button>
      )}
      <Dialog
        isOpen={isOpen}
        onClose={() => {
          setOpen(false);
        }}
        heading={t('shell.device')}
      >
        <ThemeSwitch />
        <LocaleSwitch />
      </Dialog>
    </div>
  );
};
