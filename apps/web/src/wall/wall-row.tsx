import { visitOf, type Board, type Spot, type Visit } from '@holdfast/board';
import type { Interval } from '@holdfast/shop-calendar';
import type { ReactElement } from 'react';

import { segmentsOfSpot, stitchedOfSpot } from '../floor/spot-strip.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { BayStrip } from '../strip/bay-strip.js';
import { useMeasuredWidth } from '../strip/use-measured-width.js';
import type { StripSubject } from '../strip/strip-words.js';
import type { Formats } from '../text/format.js';
import { useText } from '../text/use-text.js';
import { CautionMark } from '../ui/marks/caution-mark.js';
import { Patch } from '../ui/marks/patch.js';
import { wallPhrase } from './wall-phrase.js';

type RowProps = {
  readonly board: Board;
  readonly spot: Spot;
  /** Short enough to be read from here. */
  readonly bayName: string;
  readonly window: Interval;
  /** Epoch ms. */
  readonly now: number;
  /** Font size in CSS pixels; marks and strip go with it. */
  readonly font: number;
  /** Job numbers instead of plates, where customers look on. */
  readonly byNumber: boolean;
};

// The strip is 68 px high for letters of 38 px; it grows with them.
const stripFont = 38;

const Cautions = ({ visit, size }: { readonly visit: Visit | undefined; readonly size: number }): ReactElement => {
  const { t } = useText();
  const cautions = visit ? shownCautions(visit.cautions, t) : [];
  const isLive = cautions.some((caution) => caution.kind === 'highVoltage');
  return (
    <span className="hf-wall-caution">
      {cautions.length > 0 && (
        <CautionMark
          kind={isLive ? 'highVoltage' : 'caution'}
          title={cautions.map(({ words }) => words).join('; ')}
          size={size}
        />
      )}
    </span>
  );
};

type StripProps = Pick<RowProps, 'board' | 'spot' | 'window' | 'now' | 'font'> & {
  readonly visit: Visit | undefined;
  readonly subject: StripSubject;
};

const WallStrip = ({ board, spot, window, now, font, visit, subject }: StripProps): ReactElement => {
  const [strip, width] = useMeasuredWidth<HTMLDivElement>();
  const promised = visit?.job.promisedAt ?? null;
  const promise = promised !== null && promised > window.from && promised < window.to ? promised : null;
  // The word says why it stands or is kept: a glyph or a label would be too small to be told from here.
  const segments = segmentsOfSpot(board, spot, visit, { window, now }).map(
    ({ reason: _reason, label: _label, ...segment }) => segment,
  );
  const data = {
    from: window.from,
    to: window.to,
    now,
    segments,
    stitched: stitchedOfSpot(board, spot, window),
    promise,
  };
  return (
    <div className="hf-wall-strip" ref={strip}>
      <BayStrip {...data} width={Math.floor((width * stripFont) / font)} subject={subject} />
    </div>
  );
};

/** One bay, read from across the shop: caution, bay, patch, vehicle, strip, one phrase, one time. */
export const WallRow = (props: RowProps): ReactElement => {
  const { board, spot, bayName, now, font, byNumber } = props;
  const { t, format } = useText();
  const visit = spot.use === null ? undefined : visitOf(board, spot.use.jobId, now);
  const name = spot.spec.spots > 1 ? t('wall.spot', { bay: bayName, spot: spot.spot }) : bayName;
  const label = visit && (byNumber ? String(visit.job.number) : visit.vehicle.plate);
  const fixCount = visit?.fixes.length ?? 0;
  const promised = visit?.job.promisedAt ?? null;
  const subject = { name, fixCount, ...(label === undefined ? {} : { vehicle: label }) };
  return (
    <li className="hf-wall-row" data-bay={spot.bay.name} {...(visit ? { 'data-job': visit.job.number } : {})}>
      <Cautions visit={visit} size={font} />
      <span className="hf-wall-bay">{name}</span>
      <span className="hf-wall-patch">
        {fixCount > 0 && <Patch count={fixCount} title={t('mark.patch', { count: fixCount })} size={font * 0.92} />}
      </span>
      <span className="hf-wall-vehicle hf-code">{label}</span>
      <WallStrip {...props} visit={visit} subject={subject} />
      <span className="hf-wall-state">{t(wallPhrase(spot, visit))}</span>
      <span className="hf-wall-time hf-figures">{promised === null ? '' : wallTime(promised, now, format)}</span>
    </li>
  );
};

// In a shop's hours the clock is plain without it, and the row has no room for it.
const halfOfDay = /\s?[AP]M$/;

const wallTime = (at: number, now: number, { time, date }: Pick<Formats, 'time' | 'date'>): string =>
  date(at) === date(now) ? time(at).replace(halfOfDay, '') : (date(at).split(/[ ,]/)[0] ?? '');
