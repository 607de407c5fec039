import { expectedVisits, openVisits, type Board } from '@holdfast/board';
import type { CommandName, Row } from '@holdfast/domain';
import type { TextKey } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { pathOf } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';

/** The visits of a vehicle that nobody has checked in: one that stands here already first, then by the time they are expected. */
export const pendingVisits = (board: Board, vehicleId: string, now: number): Row<'job'>[] =>
  [...openVisits(board, now), ...expectedVisits(board, now)]
    .map(({ job }) => job)
    .filter((job) => job.vehicleId === vehicleId && job.checkedInAt === null);

/** The head of check-in and booking, with the way back. */
export const FlowHead = ({ heading }: { readonly heading: string }): ReactElement => {
  const { t } = useText();
  return (
    <ScreenHead
      heading={heading}
      acts={
        <Link className="hf-button hf-button-small hf-look-frame" href={pathOf.desk}>
          {t('checkIn.leave')}
        </Link>
      }
    />
  );
};

type StepsProps = { readonly names: readonly TextKey[]; readonly at: number };

/** Where in the flow one is. */
export const Steps = ({ names, at }: StepsProps): ReactElement => {
  const { t } = useText();
  return (
    <ol className="hf-steps" aria-label={t('checkIn.steps')}>
      {names.map((name, index) => (
        <li key={name} aria-current={index === at ? 'step' : undefined}>
          {`${String(index + 1)} ${t(name)}`}
        </li>
      ))}
    </ol>
  );
};

type StepActsProps = {
  readonly onBack: () => void;
  readonly onNext: () => void;
  readonly isReady: boolean;
  /** The last step: its act sends. */
  readonly sends?: { readonly command: CommandName; readonly act: string; readonly isPending: boolean };
};

/** Back and on; at the last step the act that sends. */
export const StepActs = ({ onBack, onNext, isReady, sends }: StepActsProps): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-step-acts">
      <Button onPress={onBack}>{t('checkIn.back')}</Button>
      {sends === undefined ? (
        <Button look="ink" isDisabled={!isReady} onPress={onNext}>
          {t('checkIn.next')}
        </Button>
      ) : (
        <Button look="ink" command={sends.command} isPending={sends.isPending} isDisabled={!isReady} onPress={onNext}>
          {sends.act}
        </Button>
      )}
    </div>
  );
};
