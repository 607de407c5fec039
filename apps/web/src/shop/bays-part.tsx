import { calendarOfBoard, rowsOf } from '@holdfast/board';
import { type Row, specOn } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { Refusal } from '../live/refusal.js';
import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { Opener } from '../pieces/form-sheet.js';
import { liftsVehicles } from '../pieces/lift-words.js';
import { OutageLines } from '../pieces/outage-lines.js';
import { Entry, Part } from '../pieces/part.js';
import { bayPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { BayForm } from './bay-form.js';
import { capacityWords, equipmentWords } from './bay-words.js';
import { asksForCare, liftState } from './lift-state.js';
import { useLiftWords } from './lift-words.js';

type BayProps = {
  readonly bay: Row<'bay'>;
  readonly spec: Row<'baySpec'>;
  readonly before: Row<'bay'> | undefined;
  readonly after: Row<'bay'> | undefined;
};

/** One place up or down in the order of the building. */
const MoveActs = ({ bay, before, after }: Omit<BayProps, 'spec'>): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const sending = useSend();
  if (!may.command('changeBay')) return null;
  const move = (position: number): void => {
    const input = { bayId: bay.id, version: bay.version, position };
    void sending.run('changeBay', input, { text: 'shop.done.order', values: { bay: bay.name } });
  };
  const act = (to: number, label: string, path: string): ReactElement => (
    <Button
      size="small"
      look="plain"
      command="changeBay"
      label={label}
      isPending={sending.pending}
      onPress={() => {
        move(to);
      }}
    >
      <svg aria-hidden="true" width="18" height="20" viewBox="0 0 18 20">
        <path className="hf-line-ink" d={path} />
      </svg>
    </Button>
  );
  return (
    <>
      {before && act(before.position, t('shop.bay.up', { bay: bay.name }), 'M9 18V3M3 9l6-6 6 6')}
      {after && act(after.position + 1, t('shop.bay.down', { bay: bay.name }), 'M9 2v15M3 11l6 6 6-6')}
      <Refusal problem={sending.problem} />
    </>
  );
};

const BayEntry = (props: BayProps): ReactElement => {
  const { bay, spec } = props;
  const text = useText();
  const { t } = text;
  const board = useBoard();
  const now = useNow(60_000);
  const lift = liftState(rowsOf(board), spec, calendarOfBoard(board).dateOf(now));
  const words = useLiftWords()(lift);
  const capacity = capacityWords(spec, text);
  return (
    <Entry
      id={`bay-${bay.id}`}
      acts={
        <>
          <MoveActs {...props} />
          <Link
            className="hf-button hf-button-small hf-look-frame"
            href={bayPath(bay.id)}
            aria-label={t('shop.bay.openAbout', { bay: bay.name })}
          >
            {t('shop.bay.open')}
          </Link>
        </>
      }
    >
      <div className="hf-entry-line" data-bay={bay.name}>
        <span className="hf-entry-title">{bay.name}</span>
        <span>{equipmentWords(spec, text)}</span>
        {capacity !== null && <span className="hf-figures">{capacity}</span>}
        {spec.spots > 1 && <span>{t('shop.bay.spotsCount', { count: spec.spots })}</span>}
        {spec.outOfUse && <strong>{t('shop.bay.isOutOfUse', { words: spec.outOfUseWords ?? '' })}</strong>}
      </div>
      {words.length > 0 && (
        <p className={asksForCare(lift) ? 'hf-small hf-entry-title' : 'hf-small hf-quiet'}>{words.join(' ')}</p>
      )}
      <OutageLines board={board} bay={bay} now={now} />
    </Entry>
  );
};

/** The bays in the order of the building; each has a page of its own. */
export const BaysPart = ({ id }: { readonly id: string }): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const rows = rowsOf(board);
  const today = calendarOfBoard(board).dateOf(useNow());
  const bays = rows
    .list('bay', (bay) => bay.endedOn === null || bay.endedOn > today)
    .sort((a, b) => a.position - b.position);
  return (
    <Part
      id={id}
      heading={t('shop.bays')}
      under={t('shop.baysUnder')}
      acts={
        <Opener label={t('shop.bay.add')} command="addBay">
          {(close) => <BayForm bay={null} spec={null} onClose={close} />}
        </Opener>
      }
    >
      <ol className="hf-entries">
        {bays.map((bay, at) => (
          <BayEntry
            key={bay.id}
            bay={bay}
            spec={specOn(rows, bay.id, today)}
            before={bays[at - 1]}
            after={bays[at + 1]}
          />
        ))}
      </ol>
      {bays.some((bay) => liftsVehicles(specOn(rows, bay.id, today).equipment)) && (
        <p className="hf-small hf-quiet">{t('shop.bay.liftWords')}</p>
      )}
    </Part>
  );
};
