import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { CancelPartForm, FitPartForm, WantPartForm } from '../pieces/part-forms.js';
import { Dated, Entries, Entry, Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { type JobPart, openFollowUps, openLines, sectionId } from './job-parties.js';

type PartProps = { readonly view: JobView; readonly part: JobPart };
const dayMs = 86_400_000;

/** Every date the supplier told, with how far it moved, and what arrived: by day. */
const useHistory = (): ((part: JobPart) => { when: string; what: string }[]) => {
  const { t, format } = useText();
  const now = useNow(60_000);
  return (part) => {
    const told = part.dueIns.map((due, at) => {
      const state = t(`word.supplier.${due.state}`);
      const before = part.dueIns.slice(0, at).findLast((one) => one.dueOn !== null)?.dueOn ?? null;
      const days =
        due.dueOn === null || before === null ? 0 : Math.round((Date.parse(due.dueOn) - Date.parse(before)) / dayMs);
      const moved = days > 0 ? t('job.slipped', { days }) : days < 0 ? t('job.gained', { days: -days }) : null;
      const is =
        due.dueOn === null ? t('job.dueNone', { state }) : t('job.dueTold', { day: format.day(due.dueOn), state });
      return { at: Date.parse(due.effectiveAt), what: [is, moved, due.words].filter((one) => one !== null).join(', ') };
    });
    const arrived = part.arrivals.map((one) => ({
      at: Date.parse(one.effectiveAt),
      what: [
        t('job.arrived', { quantity: format.decimal(one.quantity), verdict: t(`word.verdict.${one.verdict}`) }),
        one.words,
      ]
        .filter((words) => words !== null)
        .join(': '),
    }));
    return [...told, ...arrived]
      .sort((a, b) => a.at - b.at)
      .map(({ at, what }) => ({ when: format.moment(at, now), what }));
  };
};

const PartEntry = ({ view, part }: PartProps): ReactElement => {
  const { t, format } = useText();
  const suppliers = useBoard().tables.supplier;
  const history = useHistory();
  const line = view.lines.find((one) => one.id === part.lineId);
  const order = view.orders.find((one) => one.id === part.orderId);
  const facts = [
    t(`word.part.${part.state}`),
    t('job.partCount', { quantity: format.decimal(part.quantity), unit: part.unit }),
    t('job.partHere', { here: format.decimal(part.here), fitted: format.decimal(part.fitted) }),
    t(`word.needed.${part.needed}`),
    ...(part.number === null ? [] : [t('job.partNumber', { number: part.number })]),
    ...(line === undefined ? [] : [t('job.partFor', { title: line.title })]),
    ...(part.bin === null ? [] : [t('job.partBin', { bin: part.bin })]),
  ];
  const closed = part.state === 'fitted' || part.state === 'cancelled';
  return (
    <Entry
      id={`partLine-${part.id}`}
      acts={
        closed || view.job.endedAt !== null ? null : (
          <>
            {part.here !== '0' && (
              <Opener command="fitPart" label={t('job.fit')} about={part.description}>
                {(close) => <FitPartForm part={part} jobId={view.job.id} onClose={close} />}
              </Opener>
            )}
            <Opener command="cancelPart" label={t('job.cancel')} look="plain" about={part.description}>
              {(close) => <CancelPartForm part={part} jobId={view.job.id} onClose={close} />}
            </Opener>
          </>
        )
      }
    >
      <p className="hf-entry-title">{part.description}</p>
      <p className="hf-small">{facts.join(' · ')}</p>
      {order !== undefined && (
        <p className="hf-small">
          {t('job.ordered', { supplier: suppliers.get(order.supplierId)?.name ?? '', reference: order.reference })}
        </p>
      )}
      <Dated lines={history(part)} />
      {part.endWords !== null && <p className="hf-small hf-quiet">{part.endWords}</p>}
    </Entry>
  );
};

/** The parts of this visit: dates and slips, arrivals, bin. */
export const JobParts = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const lines = openLines(view);
  const followUps = openFollowUps(view);
  return (
    <Part
      id={sectionId('parts')}
      heading={t('job.parts')}
      acts={
        lines.length + followUps.length > 0 && (
          <Opener command="wantPart" label={t('job.wantPart')}>
            {(close) => <WantPartForm lines={lines} followUps={followUps} jobId={view.job.id} onClose={close} />}
          </Opener>
        )
      }
    >
      {view.partLines.length === 0 && <p className="hf-quiet">{t('job.noParts')}</p>}
      <Entries>
        {view.partLines.map((part) => (
          <PartEntry key={part.id} view={view} part={part} />
        ))}
      </Entries>
    </Part>
  );
};
