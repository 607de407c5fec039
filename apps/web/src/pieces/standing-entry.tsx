import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Opener } from './form-sheet.js';
import { Entry, SmallList } from './part.js';
import { EndStandingForm } from './standing-forms.js';

type Standing = VehicleView['standing'][number];

type StandingEntryProps = {
  readonly standing: Standing;
  /** On a visit: what its lines take of the amount, and what is left. */
  readonly use?: { readonly used: string; readonly left: string };
  readonly jobId?: string;
};

/** A standing go-ahead: for what, up to how much, by whom; on a visit with what is left of it. */
export const StandingEntry = ({ standing, use, jobId }: StandingEntryProps): ReactElement => {
  const { t, format } = useText();
  const { kind, upTo, orderNumber, byName, untilDay, endedAt, endWords } = standing;
  const kindWords = t(`word.standing.${kind}`);
  const reach = standing.jobId !== null ? 'job' : standing.vehicleId !== null ? 'vehicle' : 'customer';
  const lines = [
    [
      t('piece.standing.by', { name: byName }),
      t(`piece.standing.for.${reach}`),
      ...(orderNumber === null ? [] : [t('piece.standing.order', { number: orderNumber })]),
      ...(untilDay === null ? [] : [t('piece.standing.until', { day: format.day(untilDay) })]),
    ].join(' · '),
    ...(endedAt === null
      ? []
      : [t('piece.standing.ended', { at: format.date(Date.parse(endedAt)), words: endWords ?? 'empty' })]),
  ];
  return (
    <Entry
      id={`standingGoAhead-${standing.id}`}
      acts={
        endedAt === null ? (
          <Opener command="endStandingGoAhead" label={t('piece.standing.end')} look="plain" about={kindWords}>
            {(close) => (
              <EndStandingForm standing={standing} {...(jobId === undefined ? {} : { jobId })} onClose={close} />
            )}
          </Opener>
        ) : null
      }
    >
      <p className="hf-entry-title">
        {t('piece.standing.is', { kind: kindWords, amount: format.money(upTo) })}
        {use !== undefined && (
          <>
            {': '}
            {t('piece.standing.use', { used: format.money(use.used), left: format.money(use.left) })}
          </>
        )}
      </p>
      <SmallList lines={lines} />
    </Entry>
  );
};
