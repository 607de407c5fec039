// bay-time/ hides how the account of every opening minute is asked for and shown. It guarantees that what a bar draws is
// what the numbers beside it say, in the same textures as the strips.
import type { BayTimeView } from '@holdfast/contract';
import { useId, type ReactElement } from 'react';

import type { SegmentKind } from '../strip/strip-model.js';
import { StripBlock } from '../strip/strip-block.js';
import { bodyHeight, bodyTop } from '../strip/strip-geometry.js';
import { StripPatterns, textureIds } from '../strip/strip-patterns.js';

export type Totals = BayTimeView['totals'];
export type BayTimeClass = keyof Totals['classMs'];

/** In the order of the bar: what the bay was for comes first, empty last. */
export const barOrder = [
  'worked',
  'held',
  'noReason',
  'break',
  'stored',
  'empty',
  'outOfUse',
] as const satisfies readonly (BayTimeClass & SegmentKind)[];

type BarProps = {
  readonly totals: Pick<Totals, 'classMs' | 'openMs'>;
  /** CSS pixels. */
  readonly width: number;
  readonly sentence: string;
};

const height = bodyHeight + 4;

/** Opening time as one bar, split by what became of it, in the textures of the strips. */
export const SplitBar = ({ totals, width, sentence }: BarProps): ReactElement => {
  const textures = textureIds(useId());
  const scale = totals.openMs === 0 ? 0 : width / totals.openMs;
  const blocks = barOrder.map((kind, at) => {
    const before = barOrder.slice(0, at).reduce((sum, one) => sum + totals.classMs[one], 0);
    const left = before * scale + 0.5;
    return { kind, left, right: Math.max(left, (before + totals.classMs[kind]) * scale - 0.5) };
  });
  return (
    <svg
      className="hf-split-bar"
      role="img"
      aria-label={sentence}
      width={width}
      height={height}
      viewBox={`0 ${String(bodyTop - 2)} ${String(width)} ${String(height)}`}
    >
      <StripPatterns ids={textures} />
      {blocks.map(({ kind, left, right: end }) => (
        <StripBlock key={kind} segment={{ from: left, to: end, kind }} box={{ left, right: end }} textures={textures} />
      ))}
    </svg>
  );
};

/** One texture with its word: the legend under the bars. */
export const TextureSample = ({ kind }: { readonly kind: SegmentKind }): ReactElement => {
  const textures = textureIds(useId());
  return (
    <svg aria-hidden="true" width={40} height={height} viewBox={`0 ${String(bodyTop - 2)} 40 ${String(height)}`}>
      <StripPatterns ids={textures} />
      <StripBlock segment={{ from: 0, to: 40, kind }} box={{ left: 0, right: 40 }} textures={textures} />
    </svg>
  );
};
