import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Part } from '../pieces/part.js';
import { wheelWords } from '../pieces/wheel-words.js';
import { useText } from '../text/use-text.js';
import { Table } from '../ui/table.js';
import { sectionId } from './job-parties.js';

type Wheel = JobView['wheels'][number];

/** What is missing first: off, then on without a torque record, then done; each by its place. */
export const wheelsInOrder = (wheels: readonly Wheel[]): Wheel[] => {
  const missing = (wheel: Wheel): number => (wheel.onAt === null ? 0 : wheel.torquedAt === null ? 1 : 2);
  return [...wheels].sort((a, b) => missing(a) - missing(b) || a.position.localeCompare(b.position));
};

/** Every wheel that was off on this visit: off, on, tightened with which value, from which source, by whom. */
export const JobWheels = ({ view }: { readonly view: JobView }): ReactElement | null => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  if (view.wheels.length === 0) return null;
  const at = (instant: string | null, byId: string | null): string =>
    instant === null
      ? t('job.wheel.notSaid')
      : [format.moment(Date.parse(instant), now), people.get(byId ?? '')?.name]
          .filter((one) => one !== undefined)
          .join(', ');
  const torque = (wheel: Wheel): ReactElement => {
    if (wheel.torque === null || wheel.torquedAt === null)
      return <strong>{t(wheel.onAt === null ? 'job.wheel.off' : 'job.wheel.untorqued')}</strong>;
    const unit = wheel.torqueUnit === null ? '' : t(`word.torqueUnit.${wheel.torqueUnit}`);
    return <span className="hf-figures">{`${format.decimal(wheel.torque)}\u00a0${unit}`}</span>;
  };
  const source = (wheel: Wheel): string =>
    [wheel.torqueSource === null ? null : t(`word.torqueSource.${wheel.torqueSource}`), wheel.sourceWords, wheel.tool]
      .filter((one) => one !== null)
      .join(', ');
  return (
    <Part id={sectionId('wheels')} heading={t('job.wheels')} under={t('job.wheelsUnder')}>
      <Table
        caption={t('job.wheels')}
        captionHidden
        rows={wheelsInOrder(view.wheels)}
        rowKey={(wheel) => wheel.id}
        columns={[
          {
            key: 'position',
            heading: t('job.wheel.position'),
            isRowHeading: true,
            cell: (wheel) => <span id={`wheelRecord-${wheel.id}`}>{wheelWords(wheel.position, t)}</span>,
          },
          { key: 'torque', heading: t('job.wheel.torque'), align: 'end', cell: torque },
          { key: 'source', heading: t('job.wheel.source'), cell: source },
          {
            key: 'torqued',
            heading: t('job.wheel.torqued'),
            cell: (wheel) => (wheel.torquedAt === null ? '–' : at(wheel.torquedAt, wheel.torquedById)),
          },
          { key: 'off', heading: t('job.wheel.offAt'), cell: (wheel) => at(wheel.offAt, wheel.offById) },
          {
            key: 'on',
            heading: t('job.wheel.onAt'),
            cell: (wheel) => (wheel.onAt === null ? '–' : at(wheel.onAt, wheel.onById)),
          },
        ]}
      />
    </Part>
  );
};
