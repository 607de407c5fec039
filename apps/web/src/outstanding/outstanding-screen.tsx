import { rowsOf, type Board } from '@holdfast/board';
import type { OutstandingItem, OutstandingPage, PartLinesPage } from '@holdfast/contract';
import { openJobOf } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import './outstanding.css';
import { useRead } from '../live/reads.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard } from '../live/use-board.js';
import { usePages } from '../live/use-pages.js';
import { CsvLink } from '../pieces/csv-link.js';
import { FollowUpForm } from '../pieces/follow-up-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useMeasuredWidth } from '../strip/use-measured-width.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { OutstandingRow } from './outstanding-item.js';
import { RepairedList } from './repaired-list.js';
import { type ChosenVehicle, VehicleFilter } from './vehicle-filter.js';
import { type Axis, WindowAxis } from './window-drawing.js';
import { axisOf, entriesOf, type OutstandingEntry, windowIsEmpty } from './windows.js';

const countsOf = (
  entries: readonly OutstandingEntry[],
  today: string,
): Readonly<Record<'fixes' | 'followUps' | 'empty', number>> => ({
  fixes: entries.filter(({ fix }) => fix !== null).length,
  followUps: entries.filter(({ followUp }) => followUp !== null).length,
  empty: entries.filter((entry) => windowIsEmpty(entry, today)).length,
});

type ListProps = { readonly entries: readonly OutstandingEntry[]; readonly axis: Axis };

const OutstandingList = ({ entries, axis }: ListProps): ReactElement => {
  const { t } = useText();
  const [ref, width] = useMeasuredWidth<HTMLDivElement>();
  if (entries.length === 0) return <EmptyState heading={t('outstanding.none')} />;
  return (
    <div className="hf-outstanding-board">
      <div className="hf-outstanding hf-outstanding-head">
        <p className="hf-quiet hf-small hf-outstanding-legend">{t('outstanding.legend')}</p>
        <div className="hf-outstanding-window" ref={ref}>
          <WindowAxis axis={axis} width={width} />
        </div>
      </div>
      <ol className="hf-outstanding-list">
        {entries.map((entry) => (
          <OutstandingRow key={entry.key} entry={entry} axis={axis} width={width} />
        ))}
      </ol>
    </div>
  );
};

type Asked = { readonly chosen: ChosenVehicle | null; readonly setChosen: (vehicle: ChosenVehicle | null) => void };

/** One vehicle where the address or the box names it; else all of them. */
const useChosen = (): Asked => {
  const { t } = useText();
  const { tables } = useBoard();
  const asked = new URLSearchParams(location.search).get('vehicle');
  const [chosen, setChosen] = useState<ChosenVehicle | null>(() =>
    asked === null ? null : { id: asked, plate: tables.vehicle.get(asked)?.plate ?? t('outstanding.oneVehicle') },
  );
  return { chosen, setChosen };
};

/** Whether a vehicle is here changes without what is outstanding on it: the board knows it, the list is read anew later. */
const asOnBoard =
  (board: Board) =>
  (item: OutstandingItem): OutstandingItem => ({
    ...item,
    openJobId: openJobOf(rowsOf(board), item.vehicle.id)?.id ?? null,
  });

const Outstanding = (): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const { chosen, setChosen } = useChosen();
  const read = usePages<OutstandingPage>(
    `/api/outstanding?limit=200${chosen === null ? '' : `&vehicle=${chosen.id}`}`,
    ['outstanding'],
  );
  const parts = useRead<PartLinesPage>('/api/part-lines?state=open&limit=200', ['parts']);
  const today = read.pages[0]?.today;
  const entries = entriesOf(read.pages.flatMap((page) => page.items).map(asOnBoard(board)), parts.data?.items ?? []);
  return (
    <>
      <ScreenHead
        heading={t('nav.outstanding')}
        under={t('outstanding.under', countsOf(entries, today ?? ''))}
        acts={
          <>
            <CsvLink
              path={chosen ? `/api/outstanding?vehicle=${chosen.id}` : '/api/outstanding'}
              list={t('csv.list.outstanding')}
            />
            {chosen && (
              <Opener label={t('outstanding.add', { plate: chosen.plate })} command="addFollowUp" size="normal">
                {(close) => <FollowUpForm vehicleId={chosen.id} onClose={close} />}
              </Opener>
            )}
          </>
        }
      />
      <VehicleFilter chosen={chosen} onChange={setChosen} />
      {read.isPending && <p className="hf-quiet">{t('shell.loading')}</p>}
      {read.isFailed && <p className="hf-quiet">{t('outstanding.failed')}</p>}
      {today !== undefined && <OutstandingList entries={entries} axis={{ ...axisOf(entries, today), today }} />}
      {read.more && <Button onPress={read.more}>{t('outstanding.showMore')}</Button>}
      <RepairedList vehicleId={chosen?.id ?? null} />
    </>
  );
};

/** What is still on or owed on vehicles, also on those that have left, by the day of its first limit. */
export const OutstandingScreen = (): ReactElement => (
  <SignedIn>
    <Outstanding />
  </SignedIn>
);
