import { calendarOfBoard } from '@holdfast/board';
import type { PartLinesPage } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import './parts-desk.css';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { usePages } from '../live/use-pages.js';
import { CsvLink } from '../pieces/csv-link.js';
import { Opener } from '../pieces/form-sheet.js';
import { Part } from '../pieces/part.js';
import { SupplierForm } from '../pieces/supplier-form.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { ArrivedParts, OrderedParts } from './part-sections.js';
import { partLists } from './part-rows.js';
import { WantedParts } from './wanted-parts.js';
import { WantPart } from './want-part.js';

const path = '/api/part-lines?state=open&limit=200';
// A hold that opens or ends changes what a part keeps waiting; holds give the hint of bay time.
const hints = ['parts', 'bay-time'];

const PartsDesk = (): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const now = useNow();
  const read = usePages<PartLinesPage>(path, hints);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const items = read.pages.flatMap((page) => page.items);
  const lists = partLists(items, board, calendarOfBoard(board).dateOf(now));
  const bins = [...new Set(items.flatMap((item) => (item.bin === null ? [] : [item.bin])))].sort();
  const shared = { now, all: items, bins };
  return (
    <>
      <ScreenHead
        heading={t('nav.parts')}
        under={t('partsDesk.under', {
          wanted: lists.wanted.length,
          late: lists.late.reduce((sum, order) => sum + order.items.length, 0),
          arrived: lists.arrived.length,
        })}
        acts={
          <>
            <CsvLink path="/api/part-lines?state=all" list={t('csv.list.partLines')} />
            <WantPart />
            <Opener label={t('partsDesk.newSupplier')} command="addSupplier" size="normal">
              {(close) => <SupplierForm onClose={close} />}
            </Opener>
          </>
        }
      />
      {read.isPending && <p className="hf-quiet">{t('shell.loading')}</p>}
      {read.isFailed && <p className="hf-quiet">{t('partsDesk.failed')}</p>}
      {!read.isPending && items.length === 0 && (
        <EmptyState heading={t('partsDesk.none')}>
          <p>{t('partsDesk.noneWhy')}</p>
        </EmptyState>
      )}
      <OrderedParts heading={t('partsDesk.late')} under={t('partsDesk.lateWhy')} orders={lists.late} {...shared} />
      {lists.wanted.length > 0 && <WantedParts items={lists.wanted} chosen={chosen} onChosen={setChosen} {...shared} />}
      <OrderedParts heading={t('partsDesk.ordered')} orders={lists.orders} {...shared} />
      <ArrivedParts items={lists.arrived} {...shared} />
      {read.more && (
        <Part heading={t('partsDesk.more')}>
          <Button onPress={read.more}>{t('partsDesk.showMore')}</Button>
        </Part>
      )}
    </>
  );
};

/** Everything the parts clerk sees to: late, wanted, on order, here. */
export const PartsDeskScreen = (): ReactElement => (
  <SignedIn>
    <PartsDesk />
  </SignedIn>
);
