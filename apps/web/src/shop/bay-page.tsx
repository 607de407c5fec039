import { calendarOfBoard, rowsOf } from '@holdfast/board';
import { type Row, specOn } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link, useParams } from 'wouter';

import './shop.css';
import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { liftsVehicles } from '../pieces/lift-words.js';
import { TakeOutOfUseForm } from '../pieces/outage-forms.js';
import { OutageLines } from '../pieces/outage-lines.js';
import { outOfUseName } from '../pieces/outages.js';
import { Dated, Part } from '../pieces/part.js';
import { pathOf } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { CautionMark } from '../ui/marks/caution-mark.js';
import { Table } from '../ui/table.js';
import { BackInUseForm, BayForm, EndBayForm } from './bay-form.js';
import { capacityWords, equipmentWords, limitWords } from './bay-words.js';
import { InspectionsPart } from './inspections-part.js';
import { fromWhen } from './valid-words.js';

type BayProps = { readonly bay: Row<'bay'>; readonly spec: Row<'baySpec'>; readonly today: string };

/** What the bay was, is and will be: each set of facts with the day from which it holds. */
const FactsPart = ({ bay, spec, today }: BayProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const all = rowsOf(useBoard()).list('baySpec', (one) => one.bayId === bay.id);
  return (
    <Part
      heading={t('shop.bay.facts')}
      under={t('shop.bay.factsUnder')}
      acts={
        <Opener label={t('shop.change')} command="changeBay" about={bay.name}>
          {(close) => <BayForm bay={bay} spec={spec} onClose={close} />}
        </Opener>
      }
    >
      <Table
        caption={t('shop.bay.factsTable')}
        captionHidden
        rows={fromWhen(all, today)}
        rowKey={({ row }) => row.id}
        columns={[
          {
            key: 'from',
            heading: t('shop.when'),
            isRowHeading: true,
            cell: ({ row, key }) => <span className="hf-when">{t(key, { day: format.day(row.validFrom) })}</span>,
          },
          { key: 'equipment', heading: t('shop.bay.equipment'), cell: ({ row }) => equipmentWords(row, text) },
          {
            key: 'rated',
            heading: t('shop.bay.field.capacity'),
            align: 'end',
            cell: ({ row }) => capacityWords(row, text) ?? t('shop.notKnown'),
          },
          { key: 'fits', heading: t('shop.bay.fits'), cell: ({ row }) => limitWords(row, text).join(', ') || '–' },
          { key: 'spots', heading: t('shop.bay.spotsShort'), align: 'end', cell: ({ row }) => row.spots },
        ]}
      />
    </Part>
  );
};

/** When it, or a piece of it, could not be used. */
const OutagesPart = ({ bay, spec }: BayProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const board = useBoard();
  const now = useNow(60_000);
  const over = rowsOf(board)
    .list('outage', (one) => one.bayId === bay.id && one.toAt !== null)
    .sort((a, b) => b.fromAt - a.fromAt);
  const running = rowsOf(board).list('outage', (one) => one.bayId === bay.id && one.toAt === null);
  return (
    <Part
      heading={t('shop.outages')}
      acts={
        <Opener label={t('outage.open')} command="takeOutOfUse" about={bay.name}>
          {(close) => <TakeOutOfUseForm board={board} bay={bay} spec={spec} onClose={close} />}
        </Opener>
      }
    >
      <OutageLines board={board} bay={bay} now={now} />
      {spec.outOfUse && (
        <div className="hf-row">
          <p className="hf-entry-title">{t('shop.bay.isOutOfUse', { words: spec.outOfUseWords ?? '' })}</p>
          <Opener label={t('shop.bay.inUse')} command="changeBay" about={bay.name}>
            {(close) => <BackInUseForm bay={bay} spec={spec} onClose={close} />}
          </Opener>
        </div>
      )}
      {running.length === 0 && !spec.outOfUse && <p>{t('shop.outages.none')}</p>}
      <Dated
        lines={over.map((one) => ({
          when: `${format.moment(one.fromAt, now)} – ${format.moment(one.toAt ?? now, now)}`,
          what: t('shop.outages.was', { what: outOfUseName(one.equipment, text), words: one.words }),
        }))}
      />
    </Part>
  );
};

/** One bay: what it is from when, its lift and inspections, what of it cannot be used. */
export const BayPage = (): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const { id } = useParams<{ id: string }>();
  const board = useBoard();
  const today = calendarOfBoard(board).dateOf(useNow(60_000));
  const bay = board.tables.bay.get(id);
  if (bay === undefined) return <EmptyState heading={t('shop.bay.notThere')} />;
  const spec = specOn(rowsOf(board), bay.id, today);
  const lifts = liftsVehicles(spec.equipment);
  const of = { bay, spec, today };
  return (
    <article className="hf-read">
      <ScreenHead
        heading={bay.name}
        under={
          bay.endedOn === null ? equipmentWords(spec, text) : t('shop.bay.ended', { day: format.day(bay.endedOn) })
        }
        acts={
          <>
            <Opener label={t('shop.bay.end')} command="changeBay" about={bay.name} look="plain">
              {(close) => <EndBayForm bay={bay} onClose={close} />}
            </Opener>
            <Link className="hf-button hf-button-small hf-look-frame" href={`${pathOf.shop}#bays`}>
              {t('shop.allBays')}
            </Link>
          </>
        }
      />
      {lifts && (
        <p className="hf-care hf-lift-care">
          <CautionMark kind="caution" title={null} size={32} />
          <span>{t('shop.bay.liftWords')}</span>
        </p>
      )}
      <OutagesPart {...of} />
      {lifts && <InspectionsPart {...of} />}
      <FactsPart {...of} />
    </article>
  );
};
