import { calendarOfBoard, rowsOf } from '@holdfast/board';
import { type Row, specOn } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entry, Part, SmallList } from '../pieces/part.js';
import { useText, type Text } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { BayForm, EndBayForm, OutOfUseForm } from './bay-form.js';

const lifts: readonly string[] = ['twoPostLift', 'fourPostLift', 'scissorLift', 'jackAndStands'];

/** Whether something there lifts a vehicle: then the words on load per arm and lifting points stand above the bays. */
const liftsVehicles = (equipment: Row<'baySpec'>['equipment']): boolean =>
  equipment.some((item) => lifts.includes(item.kind));

const equipmentWords = (spec: Row<'baySpec'>, { t }: Text): string =>
  spec.equipment
    .map(({ kind, inUse, grips }) => {
      const name =
        grips === null
          ? t(`word.equipment.${kind}`)
          : t(`shop.bay.grips.${grips}`, { kind: t(`word.equipment.${kind}`) });
      return inUse ? name : t('shop.bay.notInUse', { kind: name });
    })
    .join(', ');

const factLines = (spec: Row<'baySpec'>, text: Text): string[] => {
  const { t, format } = text;
  const limits = [
    spec.maxLengthMm === null ? null : t('shop.bay.limit.length', { mm: format.number(spec.maxLengthMm) }),
    spec.maxHeightMm === null ? null : t('shop.bay.limit.height', { mm: format.number(spec.maxHeightMm) }),
    spec.maxWheelbaseMm === null ? null : t('shop.bay.limit.wheelbase', { mm: format.number(spec.maxWheelbaseMm) }),
  ].filter((limit) => limit !== null);
  const { inspectedOn, inspectionOutcome: outcome, inspectionIntervalMonths: months } = spec;
  return [
    spec.capacity === null
      ? null
      : t('shop.bay.rated', { capacity: format.decimal(spec.capacity), unit: spec.capacityUnit }),
    limits.length === 0 ? null : t('shop.bay.limits', { limits: limits.join(', ') }),
    inspectedOn === null
      ? null
      : t('shop.bay.inspected', { day: format.day(inspectedOn), outcome: outcome ?? 'passed', months: months ?? 0 }),
  ].filter((line) => line !== null);
};

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
  return (
    <Entry
      id={`bay-${bay.id}`}
      acts={
        <>
          <Opener label={t('shop.change')} command="changeBay" about={bay.name}>
            {(close) => <BayForm bay={bay} spec={spec} onClose={close} />}
          </Opener>
          <Opener
            label={t(spec.outOfUse ? 'shop.bay.inUse' : 'shop.bay.outOfUse')}
            command="changeBay"
            about={bay.name}
          >
            {(close) => <OutOfUseForm bay={bay} spec={spec} onClose={close} />}
          </Opener>
          <Opener label={t('shop.bay.end')} command="changeBay" about={bay.name} look="plain">
            {(close) => <EndBayForm bay={bay} onClose={close} />}
          </Opener>
          <MoveActs {...props} />
        </>
      }
    >
      <div className="hf-entry-line" data-bay={bay.name}>
        <span className="hf-entry-title">{bay.name}</span>
        <span>{equipmentWords(spec, text)}</span>
        {spec.spots > 1 && <span>{t('shop.bay.spotsCount', { count: spec.spots })}</span>}
        {spec.outOfUse && <strong>{t('shop.bay.isOutOfUse', { words: spec.outOfUseWords ?? '' })}</strong>}
      </div>
      <SmallList lines={factLines(spec, text)} />
    </Entry>
  );
};

/** The bays in the order of the building. */
export const BaysPart = (): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const rows = rowsOf(board);
  const today = calendarOfBoard(board).dateOf(useNow());
  const bays = rows
    .list('bay', (bay) => bay.endedOn === null || bay.endedOn > today)
    .sort((a, b) => a.position - b.position);
  return (
    <Part
      heading={t('shop.bays')}
      under={t('shop.baysUnder')}
      acts={
        <Opener label={t('shop.bay.add')} command="addBay" look="ink">
          {(close) => <BayForm bay={null} spec={null} onClose={close} />}
        </Opener>
      }
    >
      {bays.some((bay) => liftsVehicles(specOn(rows, bay.id, today).equipment)) && (
        <p className="hf-care">{t('shop.bay.liftWords')}</p>
      )}
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
    </Part>
  );
};
