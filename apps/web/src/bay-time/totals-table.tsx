import type { BayTimeView } from '@holdfast/contract';
import { holdReasons, type HoldReason } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useText, type Text } from '../text/use-text.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { Table, type TableColumn } from '../ui/table.js';
import { barOrder, SplitBar, TextureSample, type Totals } from './split-bar.js';

const barWidth = 160;

/** "62 %", or a dash where nothing was available. */
export const percent = (share: number | null, { t, format }: Pick<Text, 't' | 'format'>): string =>
  share === null ? t('bayTime.noShare') : t('bayTime.percent', { percent: format.number(Math.round(share * 100)) });

export const hours = (milliseconds: number, { format }: Pick<Text, 'format'>): string =>
  milliseconds === 0 ? '–' : format.duration(milliseconds / 60_000);

/** What the bar draws, as a sentence. */
const splitSentence = (name: string, totals: Totals, text: Text): string => {
  const parts = barOrder
    .filter((kind) => totals.classMs[kind] > 0)
    .map((kind) => `${text.t(`kind.${kind}`)} ${hours(totals.classMs[kind], text)}`);
  return `${name}: ${parts.length === 0 ? text.t('bayTime.nothing') : parts.join(', ')}.`;
};

type Line = { readonly key: string; readonly name: string; readonly totals: Totals };

/** Per bay the split of its opening time: the bar, and its numbers beside it. */
export const BaysTable = ({ view }: { readonly view: BayTimeView }): ReactElement => {
  const text = useText();
  const { t } = text;
  const lines: Line[] = [
    ...view.bays.map((bay) => ({ key: bay.bayId, name: bay.name, totals: bay.totals })),
    ...(view.bays.length > 1 ? [{ key: 'all', name: t('bayTime.allBays'), totals: view.totals }] : []),
  ];
  const number = (key: string, heading: string, cell: (totals: Totals) => string): TableColumn<Line> => ({
    key,
    heading,
    align: 'end',
    cell: ({ totals }) => cell(totals),
  });
  return (
    <>
      <Table
        caption={t('bayTime.splitTable')}
        captionHidden
        rows={lines}
        rowKey={({ key }) => key}
        columns={[
          {
            key: 'bay',
            heading: t('bayTime.bay'),
            isRowHeading: true,
            cell: ({ name }) => <span data-bay={name}>{name}</span>,
          },
          {
            key: 'bar',
            heading: t('bayTime.split'),
            cell: ({ name, totals }) => (
              <SplitBar totals={totals} width={barWidth} sentence={splitSentence(name, totals, text)} />
            ),
          },
          number('open', t('bayTime.open'), ({ openMs }) => hours(openMs, text)),
          ...barOrder.map((kind) =>
            number(kind, t(`bayTime.kind.${kind}`), ({ classMs }) => hours(classMs[kind], text)),
          ),
          number('occupancy', t('bayTime.occupancy'), ({ occupancy }) => percent(occupancy, text)),
          number('use', t('bayTime.use'), ({ utilisation }) => percent(utilisation, text)),
        ]}
      />
      <TextureLegend kinds={barOrder} />
    </>
  );
};

/** What the textures of the bars mean. */
export const TextureLegend = ({ kinds }: { readonly kinds: readonly (typeof barOrder)[number][] }): ReactElement => {
  const { t } = useText();
  return (
    <ul className="hf-textures">
      {kinds.map((kind) => (
        <li key={kind}>
          <TextureSample kind={kind} /> {t(`kind.${kind}`)}
        </li>
      ))}
    </ul>
  );
};

type Held = { readonly reason: HoldReason; readonly milliseconds: number };

const heldByReason = ({ heldMs }: Totals): Held[] =>
  holdReasons
    .map((reason) => ({ reason, milliseconds: heldMs[reason] ?? 0 }))
    .filter(({ milliseconds }) => milliseconds > 0)
    .sort((a, b) => b.milliseconds - a.milliseconds);

/** Why bays stood held, longest first. */
export const HeldTable = ({ totals }: { readonly totals: Totals }): ReactElement => {
  const text = useText();
  const { t } = text;
  const rows = heldByReason(totals);
  const most = rows[0]?.milliseconds ?? 0;
  return (
    <Table
      caption={t('bayTime.heldTable')}
      captionHidden
      rows={rows}
      rowKey={({ reason }) => reason}
      empty={<p className="hf-quiet">{t('bayTime.noneHeld')}</p>}
      columns={[
        {
          key: 'reason',
          heading: t('bayTime.reason'),
          isRowHeading: true,
          cell: ({ reason }) => (
            <span className="hf-held-reason">
              <ReasonGlyph reason={reason} title={null} size={20} /> {t(`reason.${reason}`)}
            </span>
          ),
        },
        {
          key: 'bar',
          heading: t('bayTime.kind.held'),
          cell: ({ reason, milliseconds }) => (
            <SplitBar
              totals={{
                openMs: most,
                classMs: { worked: 0, held: milliseconds, noReason: 0, break: 0, stored: 0, empty: 0, outOfUse: 0 },
              }}
              width={barWidth}
              sentence={`${t(`reason.${reason}`)}: ${hours(milliseconds, text)}`}
            />
          ),
        },
        {
          key: 'hours',
          heading: t('bayTime.hours'),
          align: 'end',
          cell: ({ milliseconds }) => hours(milliseconds, text),
        },
        {
          key: 'share',
          heading: t('bayTime.ofHeld'),
          align: 'end',
          cell: ({ milliseconds }) =>
            percent(totals.classMs.held === 0 ? null : milliseconds / totals.classMs.held, text),
        },
      ]}
    />
  );
};
