import { Component, type ReactNode } from 'react';

import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Notice } from '../ui/notice.js';

const Failed = (): ReactNode => {
  const { t } = useText();
  return (
    <div className="hf-stack">
      <Notice kind="refusal" lines={[{ sentence: t('shell.screenFailed') }]} />
      <Button
        onPress={() => {
          location.reload();
        }}
      >
        {t('shell.drawAgain')}
      </Button>
    </div>
  );
};

type Props = { readonly children: ReactNode; /** A new place gets a new chance. */ readonly place: string };

type Failure = { readonly failedAt: string | null };

/** Keeps the shell when a screen cannot be drawn, and says that nothing recorded is lost. */
export class ScreenFailure extends Component<Props, Failure> {
  override state: Failure = { failedAt: null };

  static getDerivedStateFromError(): Failure {
    return { failedAt: location.pathname };
  }

  override render(): ReactNode {
    return this.state.failedAt === this.props.place ? <Failed /> : this.props.children;
  }
}
