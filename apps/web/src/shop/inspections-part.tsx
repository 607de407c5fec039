import { rowsOf } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Dated, Part } from '../pieces/part.js';
import { useText, type Text } from '../text/use-text.js';
import { Table } from '../ui/table.js';
import { AllowOverdueForm, InspectionForm } from './lift-forms.js';
import { asksForCare, followedInterval, liftState } from './lift-state.js';
import { useLiftWords } from './lift-words.js';

type Shown = {
  readonly id: string;
  readonly on: string;
  readonly outcome: 'passed' | 'failed';
  readonly months: number | null;
  readonly inspector: string | null;
  readonly words: string | null;
};

type InspectionsProps = { readonly bay: Row<'bay'>; readonly spec: Row<'baySpec'>; readonly today: string };

/** Recorded inspections, the last first; before any was, the one that the facts of the bay tell of. */
const shownOf = (recorded: readonly Row<'liftInspection'>[], spec: Row<'baySpec'>, { t }: Pick<Text, 't'>): Shown[] => {
  const known: Shown[] =
    spec.inspectedOn === null
      ? []
      : [
          {
            id: spec.id,
            on: spec.inspectedOn,
            outcome: spec.inspectionOutcome ?? 'passed',
            months: spec.inspectionIntervalMonths,
            inspector: null,
            words: t('shop.lift.fromFacts'),
          },
        ];
  const rows = recorded.map(({ id, inspectedOn, outcome, intervalMonths, inspector, words }) => ({
    ...{ id, on: inspectedOn, outcome, months: intervalMonths, inspector, words },
  }));
  return [...rows, ...known.filter(({ on }) => rows.every((one) => one.on !== on))].sort((a, b) =>
    a.on < b.on ? 1 : -1,
  );
};

const Inspections = ({ rows }: { readonly rows: readonly Shown[] }): ReactElement => {
  const { t, format } = useText();
  return (
    <Table
      caption={t('shop.lift.table')}
      captionHidden
      rows={rows}
      rowKey={({ id }) => id}
      empty={<p className="hf-quiet">{t('shop.lift.noInspections')}</p>}
      columns={[
        {
          key: 'on',
          heading: t('shop.lift.day'),
          isRowHeading: true,
          cell: ({ on }) => <span className="hf-when">{format.day(on)}</span>,
        },
        {
          key: 'outcome',
          heading: t('shop.bay.field.outcome'),
          cell: ({ outcome }) => t(`shop.bay.outcome.${outcome}`),
        },
        {
          key: 'next',
          heading: t('shop.lift.interval'),
          align: 'end',
          cell: ({ months }) => (months === null ? '–' : t('shop.months', { months })),
        },
        { key: 'by', heading: t('shop.lift.by'), cell: ({ inspector }) => inspector ?? '–' },
        { key: 'words', heading: t('shop.lift.foundShort'), cell: ({ words }) => words ?? '' },
      ]}
    />
  );
};

/** How the lift stands with its inspections, what was found each time, and what was decided while one was overdue. */
export const InspectionsPart = ({ bay, spec, today }: InspectionsProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const rows = rowsOf(useBoard());
  const state = liftState(rows, spec, today);
  const [first, ...more] = useLiftWords()(state);
  const ofBay = ({ bayId }: { readonly bayId: string }): boolean => bayId === bay.id;
  const decisions = rows.list('liftDecision', ofBay).sort((a, b) => (a.untilDay < b.untilDay ? 1 : -1));
  return (
    <Part
      heading={t('shop.lift.inspections')}
      acts={
        <>
          <Opener label={t('shop.lift.inspect')} command="recordLiftInspection" about={bay.name}>
            {(close) => <InspectionForm bay={bay} interval={followedInterval(rows, spec)} onClose={close} />}
          </Opener>
          {state.kind === 'overdue' && state.decision === null && (
            <Opener label={t('shop.lift.allow')} command="allowOverdueLift" about={bay.name}>
              {(close) => <AllowOverdueForm bay={bay} dueOn={state.dueOn} onClose={close} />}
            </Opener>
          )}
        </>
      }
    >
      <p className={asksForCare(state) ? 'hf-entry-title' : undefined}>{first}</p>
      {more.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <Inspections rows={shownOf(rows.list('liftInspection', ofBay), spec, text)} />
      {decisions.length > 0 && (
        <>
          <h3>{t('shop.lift.decisions')}</h3>
          <Dated
            lines={decisions.map((one) => ({
              when: t('shop.lift.decidedUntil', { day: format.day(one.untilDay) }),
              what: one.words,
            }))}
          />
        </>
      )}
    </Part>
  );
};
