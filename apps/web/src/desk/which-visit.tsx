import type { Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';

type WhichVisitProps = {
  readonly pending: readonly Row<'job'>[];
  readonly booked: Row<'job'> | null;
  readonly onChange: (job: Row<'job'> | null) => void;
};

const newOne = 'new';

/** Whether a booked visit begins, or a new one; nothing to ask where none is booked. One that stands here is gone on with. */
export const WhichVisit = ({ pending, booked, onChange }: WhichVisitProps): ReactElement | null => {
  const { t, format } = useText();
  const now = useNow(60_000);
  if (pending.length === 0) return null;
  const isHere = pending.some((job) => job.arrivedAt !== null);
  const label = ({ arrivedAt, expectedAt, number }: Row<'job'>): string =>
    arrivedAt === null
      ? t('checkIn.bookedIs', { at: format.moment(expectedAt ?? now, now), number })
      : t('checkIn.bookedHere', { number });
  return (
    <Choice
      label={t('checkIn.booked')}
      value={booked?.id ?? newOne}
      onChange={(id) => {
        onChange(pending.find((job) => job.id === id) ?? null);
      }}
      options={[
        ...pending.map((job) => ({ value: job.id, label: label(job) })),
        { value: newOne, label: t('checkIn.bookedNew'), isDisabled: isHere },
      ]}
    />
  );
};
