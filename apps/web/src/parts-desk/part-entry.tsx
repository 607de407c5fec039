import { calendarOfBoard } from '@holdfast/board';
import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';

import { useBoard } from '../live/use-board.js';
import { Dated } from '../pieces/part.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { CautionSlot } from '../ui/caution-slot.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { Plate } from '../ui/plate.js';
import { bayKeptBy, type PartItem } from './part-rows.js';
import { dueWords, quantityWords, slipLines } from './part-words.js';

type EntryProps = {
  readonly item: PartItem;
  /** Epoch ms. */
  readonly now: number;
  /** Stands where the name of the part is: a tick with it, where the line can be chosen. */
  readonly title?: ReactNode;
  readonly acts: ReactNode;
};

/** Which vehicle, which visit and line it is for. */
const Purpose = ({ item }: { readonly item: PartItem }): ReactElement => {
  const { t } = useText();
  const { tables } = useBoard();
  const fixes = [...tables.temporaryFix.values()].filter(
    (fix) => fix.vehicleId === item.vehicleId && fix.state !== 'ended',
  );
  const cautions = [...tables.caution.values()].filter(
    (one) => one.vehicleId === item.vehicleId && one.endedAt === null,
  );
  const to = item.jobId === null ? vehiclePath(item.vehicleId) : jobPath(item.jobId);
  return (
    <div className="hf-part-purpose">
      <CautionSlot cautions={shownCautions(cautions, t)} />
      <Plate plate={item.plate} fixCount={fixes.length} />
      <div>
        <Link href={to}>
          {item.jobNumber === null
            ? item.vehicleDescription
            : t('partsDesk.job', { number: item.jobNumber, what: item.vehicleDescription })}
        </Link>
        <span className="hf-quiet hf-small">{item.lineTitle ?? t('partsDesk.forFollowUp')}</span>
      </div>
    </div>
  );
};

const Kept = ({ item, now }: { readonly item: PartItem; readonly now: number }): ReactElement | null => {
  const { t, format } = useText();
  const board = useBoard();
  const [hold] = item.holds;
  if (!hold) return null;
  const bay = bayKeptBy(item, board);
  const duration = format.duration(calendarOfBoard(board).openMinutes(Date.parse(hold.fromAt), now));
  return (
    <p className="hf-part-kept" {...(bay === null ? {} : { 'data-bay': bay })}>
      <ReasonGlyph reason="parts" title={null} size={18} />
      <span>{bay === null ? t('partsDesk.holds', { duration }) : t('partsDesk.keepsBay', { bay, duration })}</span>
    </p>
  );
};

/** One part line: what, for which vehicle, needed when, due when, what it keeps, and what the clerk can do. */
export const PartEntry = ({ item, now, title, acts }: EntryProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const due = dueWords(item, text);
  const jobNumber = item.jobNumber;
  return (
    <li className="hf-part-line" id={`partLine-${item.id}`} {...(jobNumber === null ? {} : { 'data-job': jobNumber })}>
      <div className="hf-part-what">
        {title ?? <span className="hf-entry-title">{item.description}</span>}
        <span className="hf-small">
          <span className="hf-figures">{quantityWords(item, text)}</span>
          {item.number !== null && (
            <>
              {' · '}
              <span className="hf-code">{item.number}</span>
            </>
          )}
          {item.bin !== null && (
            <>
              {' · '}
              <strong>{t('partsDesk.bin', { bin: item.bin })}</strong>
            </>
          )}
        </span>
      </div>
      <Purpose item={item} />
      <div className="hf-part-when">
        <span>{t('partsDesk.needed', { needed: t(`word.needed.${item.needed}`) })}</span>
        {item.state !== 'arrived' && (
          <span>{due ?? t(item.state === 'wanted' ? 'partsDesk.due.notAsked' : 'partsDesk.due.none')}</span>
        )}
        <span className="hf-quiet hf-small">
          {t('partsDesk.since', { at: format.moment(Date.parse(item.effectiveAt), now) })}
        </span>
        <Kept item={item} now={now} />
      </div>
      <div className="hf-entry-acts">{acts}</div>
      <div className="hf-part-slips">
        <Dated lines={item.state === 'arrived' ? [] : slipLines(item, text)} />
      </div>
    </li>
  );
};
