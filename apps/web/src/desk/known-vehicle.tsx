import type { VehicleView } from '@holdfast/contract';
import { calendarOfBoard } from '@holdfast/board';
import { addDays } from '@holdfast/shop-calendar';
import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';

import { useBoard, useNow } from '../live/use-board.js';
import { useLimitWords } from '../pieces/limits-fields.js';
import { SmallList } from '../pieces/part.js';
import { VehicleHead } from '../pieces/vehicle-head.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { StitchedLine } from '../ui/marks/stitched-line.js';
import type { Draft } from './draft.js';
import { useCustomer, useStanding } from './use-customer.js';

type KnownProps = {
  readonly view: VehicleView;
  readonly draft: Draft;
  readonly onChange: (part: Partial<Draft>) => void;
  /** With everything that is known; else the vehicle alone. */
  readonly isFull: boolean;
  /** Visits that are booked or under way are named: a booking does not go on with one. */
  readonly saysVisits?: boolean;
};

const Known = ({ heading, children }: { readonly heading: string; readonly children: ReactNode }): ReactElement => (
  <div className="hf-known">
    <h2>{heading}</h2>
    {children}
  </div>
);

/** What is outstanding on the vehicle: temporary fixes under their stitched line, follow-ups with their limits. */
const Outstanding = ({ view }: Pick<KnownProps, 'view'>): ReactElement => {
  const { t } = useText();
  const limits = useLimitWords();
  const fixes = view.temporaryFixes.filter((fix) => fix.state !== 'ended');
  const open = view.followUps.filter((followUp) => followUp.state === 'open');
  const joined = (words: readonly string[]): string => words.filter((one) => one !== '').join(' · ');
  return (
    <>
      {fixes.length > 0 && (
        <Known heading={t('checkIn.temporaryFixes')}>
          <StitchedLine title={null} length={120} size={12} />
          <SmallList lines={fixes.map((fix) => joined([fix.place, fix.standsInFor, limits(fix)]))} />
        </Known>
      )}
      {open.length > 0 && (
        <Known heading={t('checkIn.outstanding')}>
          <SmallList lines={open.map((one) => joined([one.title, t(`word.urgency.${one.urgency}`), limits(one)]))} />
        </Known>
      )}
    </>
  );
};

const lately = 180;
const mostShown = 6;

/** Work done here that the visit may come back for: what has a guarantee still, and what was done lately. */
const WorkDone = ({ view, draft, onChange }: KnownProps): ReactElement | null => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const calendar = calendarOfBoard(useBoard());
  const today = calendar.dateOf(now);
  const since = addDays(today, -lately);
  const done = view.workDone
    .filter(
      ({ endedAt, guaranteeUntil }) =>
        (guaranteeUntil !== null && guaranteeUntil >= today) || calendar.dateOf(Date.parse(endedAt)) >= since,
    )
    .slice(0, mostShown);
  if (done.length === 0) return null;
  const guarantee = (until: string | null): string => {
    if (until === null) return t('checkIn.noGuarantee');
    return t(until >= today ? 'checkIn.guarantee' : 'checkIn.guaranteeOver', { day: format.day(until) });
  };
  return (
    <Known heading={t('checkIn.workDone')}>
      <ul className="hf-found">
        {done.map((line) => (
          <li key={line.lineId}>
            <span>
              {t('checkIn.workDoneIs', {
                title: line.title,
                number: line.jobNumber,
                day: format.date(Date.parse(line.endedAt)),
              })}
              <span className="hf-small hf-quiet"> · {guarantee(line.guaranteeUntil)}</span>
            </span>
            {draft.comebackOfLineId === line.lineId ? (
              <Button
                size="small"
                pressed
                label={`${t('checkIn.comeback')}: ${line.title}`}
                onPress={() => {
                  onChange({ kind: 'normal', comebackOfLineId: null });
                }}
              >
                {t('checkIn.comeback')}
              </Button>
            ) : (
              <Button
                size="small"
                pressed={false}
                label={`${t('checkIn.comeback')}: ${line.title}`}
                onPress={() => {
                  onChange({ kind: 'comeback', comebackOfLineId: line.lineId });
                }}
              >
                {t('checkIn.comeback')}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </Known>
  );
};

/** Visits that are booked or under way, which a booking does not touch. */
const OtherVisits = ({ view }: Pick<KnownProps, 'view'>): ReactElement | null => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const others = view.jobs.filter((job) => job.endedAt === null);
  if (others.length === 0) return null;
  return (
    <ul className="hf-small-list">
      {others.map((job) => (
        <li key={job.id}>
          <Link href={jobPath(job.id)}>
            {job.arrivedAt === null && job.expectedAt !== null
              ? t('booking.already', { at: format.moment(Date.parse(job.expectedAt), now), number: job.number })
              : t('booking.hereNow', { number: job.number })}
          </Link>
        </li>
      ))}
    </ul>
  );
};

/** A fleet has more vehicles than anybody wants to read past. */
const mostOpen = 4;

/** The other vehicles of whoever the visit is for. */
const OtherVehicles = ({ view, draft }: Pick<KnownProps, 'view' | 'draft'>): ReactElement | null => {
  const { t } = useText();
  const others = (useCustomer(draft.customerId)?.vehicles ?? []).filter((one) => one.id !== view.vehicle.id);
  if (others.length === 0) return null;
  const list = (
    <ul className="hf-known-vehicles">
      {others.map(({ id, plate, description }) => (
        <li key={id}>
          <Link className="hf-code" href={vehiclePath(id)}>
            {plate}
          </Link>{' '}
          <span className="hf-quiet">{description}</span>
        </li>
      ))}
    </ul>
  );
  if (others.length <= mostOpen) return <Known heading={t('checkIn.otherVehicles')}>{list}</Known>;
  return (
    <details className="hf-desk-more">
      <summary>{t('checkIn.otherVehiclesMany', { count: others.length })}</summary>
      {list}
    </details>
  );
};

/** The vehicle that comes in, and at once what the shop knows of it. */
export const KnownVehicle = (props: KnownProps): ReactElement => {
  const { view, isFull } = props;
  const { t, format } = useText();
  const standing = useStanding(view);
  const { vehicle } = view;
  const fixes = view.temporaryFixes.filter((fix) => fix.state !== 'ended').length;
  return (
    <section className="hf-known-vehicle" aria-label={vehicle.plate}>
      <VehicleHead
        plate={vehicle.plate}
        description={vehicle.description}
        cautions={view.cautions.filter((caution) => caution.endedAt === null)}
        fixCount={fixes}
      />
      {isFull && (
        <>
          {props.saysVisits === true && <OtherVisits view={view} />}
          <Outstanding view={view} />
          {standing.length > 0 && (
            <Known heading={t('checkIn.standingNow')}>
              <SmallList
                lines={standing.map((one) =>
                  [
                    t('piece.standing.is', { kind: t(`word.standing.${one.kind}`), amount: format.money(one.upTo) }),
                    ...(one.orderNumber === null ? [] : [t('piece.standing.order', { number: one.orderNumber })]),
                    ...(one.untilDay === null ? [] : [t('piece.standing.until', { day: format.day(one.untilDay) })]),
                  ].join(' · '),
                )}
              />
            </Known>
          )}
          <WorkDone {...props} />
          <OtherVehicles {...props} />
        </>
      )}
    </section>
  );
};
