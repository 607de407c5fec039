import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { AgeTicksShape } from '../ui/marks/age-ticks.js';
import { ReasonShape } from '../ui/marks/reason-glyph.js';
import { bodyBottom, bodyMiddle, bodyTop } from './strip-geometry.js';
import type { StripSegment } from './strip-model.js';
import type { TextureIds } from './strip-patterns.js';

type Box = { readonly left: number; readonly right: number };
type BlockProps = { readonly segment: StripSegment; readonly box: Box; readonly textures: TextureIds };

const glyphRoom = 30;

/** The outline of a block; past its limit the upper right corner is cut. */
const outline = ({ left, right }: Box, inset: number, cut: boolean): string => {
  const [l, r] = [left + inset, Math.max(left + inset, right - inset)];
  const [top, bottom] = [bodyTop + inset, bodyBottom - inset];
  const corner = cut ? Math.min(10, (r - l) / 2) : 0;
  return `M${l.toFixed(1)} ${String(top)}H${(r - corner).toFixed(1)}l${corner.toFixed(1)} ${corner.toFixed(1)}V${String(bottom)}H${l.toFixed(1)}Z`;
};

const textureOf = (segment: StripSegment, textures: TextureIds): string => {
  const past = segment.waiting === 'past';
  if (segment.kind === 'noReason') return past ? textures.dotsPast : textures.dots;
  return past ? textures.hatchPast : textures.hatch;
};

/** Held or standing without a reason: a frame with its texture, the reason in a clear square, ticks above. */
const WaitingBlock = ({ segment, box, textures }: BlockProps): ReactElement => {
  const reason = box.right - box.left >= glyphRoom ? segment.reason : undefined;
  const frame = segment.waiting === undefined ? 'hf-frame' : 'hf-frame hf-frame-wait';
  return (
    <g className="hf-block">
      <path
        className="hf-block-fill"
        fill={`url(#${textureOf(segment, textures)})`}
        d={outline(box, 0, segment.waiting === 'past')}
      />
      <path className={frame} d={outline(box, 1, segment.waiting === 'past')} />
      {reason !== undefined && (
        <>
          <rect className="hf-clear" x={box.left + 4} y={bodyTop + 4} width={24} height={24} />
          <ReasonShape reason={reason} x={box.left + 6.4} y={bodyTop + 6.4} scale={0.8} />
        </>
      )}
      {segment.ageTicks !== undefined && <AgeTicksShape count={segment.ageTicks} x={box.left} y={bodyTop - 2} />}
    </g>
  );
};

/** Nobody knows: the line is broken by two strokes. */
const UnknownBlock = ({ box }: { box: Box }): ReactElement => {
  const middle = (box.left + box.right) / 2;
  const d = [
    `M${box.left.toFixed(1)} ${String(bodyMiddle)}H${Math.max(box.left, middle - 9).toFixed(1)}`,
    `M${Math.min(box.right, middle + 9).toFixed(1)} ${String(bodyMiddle)}H${box.right.toFixed(1)}`,
    `M${(middle - 8).toFixed(1)} ${String(bodyMiddle + 8)}l6-16M${(middle + 2).toFixed(1)} ${String(bodyMiddle + 8)}l6-16`,
  ].join('');
  return <path className="hf-baseline hf-unknown" d={d} />;
};

const PlannedBlock = ({ segment, box }: { segment: StripSegment; box: Box }): ReactElement => {
  const room = box.right - box.left - 12;
  const label = segment.label !== undefined && room > segment.label.length * 7.6 ? segment.label : null;
  return (
    <g className="hf-block">
      <path className="hf-frame hf-frame-planned" d={outline(box, 1, false)} />
      {label !== null && (
        <text className="hf-block-label" x={box.left + 8} y={bodyMiddle + 4}>
          {label}
        </text>
      )}
    </g>
  );
};

const bracket = 9;

/** Kept for a vehicle that is out: a bracket at each end, and what it is kept for between them. */
const KeptBlock = ({ segment, box }: { segment: StripSegment; box: Box }): ReactElement => {
  const { t } = useText();
  const [l, r] = [box.left + 1, Math.max(box.left + 1, box.right - 1)];
  const arm = Math.min(bracket, (r - l) / 2);
  const [top, bottom] = [String(bodyTop + 1), String(bodyBottom - 1)];
  const end = (at: number, towards: number): string =>
    `M${(at + towards).toFixed(1)} ${top}H${at.toFixed(1)}V${bottom}H${(at + towards).toFixed(1)}`;
  const words = segment.label === undefined ? null : t('strip.keptFor', { vehicle: segment.label });
  const fits = words !== null && r - l - 2 * bracket > words.length * 7;
  return (
    <g className="hf-block">
      <path className="hf-frame" d={end(l, arm) + end(r, -arm)} />
      {fits && (
        <text className="hf-block-label" x={l + bracket + 4} y={bodyMiddle + 4}>
          {words}
        </text>
      )}
    </g>
  );
};

const OutOfUseBlock = ({ box }: { box: Box }): ReactElement => {
  const [l, r] = [(box.left + 1).toFixed(1), (box.right - 1).toFixed(1)];
  const [top, bottom] = [bodyTop + 1, bodyBottom - 1].map(String);
  return (
    <g className="hf-block">
      <path
        className="hf-frame"
        d={`${outline(box, 1, false)}M${l} ${top ?? ''}L${r} ${bottom ?? ''}M${l} ${bottom ?? ''}L${r} ${top ?? ''}`}
      />
    </g>
  );
};

/** One span of a strip in the texture of its kind. */
export const StripBlock = ({ segment, box, textures }: BlockProps): ReactElement | null => {
  if (box.right - box.left < 0.5) return null;
  switch (segment.kind) {
    case 'worked':
      return <path className="hf-block hf-block-fill hf-worked" d={outline(box, 0, false)} />;
    case 'held':
    case 'noReason':
      return <WaitingBlock segment={segment} box={box} textures={textures} />;
    case 'planned':
      return <PlannedBlock segment={segment} box={box} />;
    case 'kept':
      return <KeptBlock segment={segment} box={box} />;
    case 'outOfUse':
      return <OutOfUseBlock box={box} />;
    case 'unknown':
      return <UnknownBlock box={box} />;
    case 'stored':
      return <path className="hf-block hf-frame" d={outline(box, 1, false)} />;
    case 'break':
      return (
        <rect
          className="hf-block hf-frame"
          x={box.left}
          y={bodyMiddle - 5}
          width={Math.max(0, box.right - box.left)}
          height={10}
        />
      );
    case 'empty':
      return (
        <path className="hf-baseline" d={`M${box.left.toFixed(1)} ${String(bodyMiddle)}H${box.right.toFixed(1)}`} />
      );
  }
};
