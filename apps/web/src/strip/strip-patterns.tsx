import type { ReactElement } from 'react';

export type TextureIds = {
  readonly hatch: string;
  readonly dots: string;
  readonly hatchPast: string;
  readonly dotsPast: string;
};

export const textureIds = (base: string): TextureIds => ({
  hatch: `${base}hatch`,
  dots: `${base}dots`,
  hatchPast: `${base}hatch-past`,
  dotsPast: `${base}dots-past`,
});

/** Hatch at 45° and dots, in grey for a normal wait and cut out of solid blue for one past its limit. */
export const StripPatterns = ({ ids, period = 12 }: { ids: TextureIds; period?: number }): ReactElement => {
  const shared = { width: period, height: period, patternUnits: 'userSpaceOnUse' } as const;
  const third = period / 3;
  return (
    <defs>
      <pattern id={ids.hatch} {...shared} patternTransform="rotate(45)">
        <rect width={third} height={period} className="hf-fill-frame" />
      </pattern>
      <pattern id={ids.hatchPast} {...shared} patternTransform="rotate(45)">
        <rect width={period} height={period} className="hf-fill-wait" />
        <rect width={period / 7} height={period} className="hf-fill-on-wait" />
      </pattern>
      <pattern id={ids.dots} {...shared}>
        <circle cx={period / 2} cy={period / 2} r={period / 5.5} className="hf-fill-frame" />
      </pattern>
      <pattern id={ids.dotsPast} {...shared}>
        <rect width={period} height={period} className="hf-fill-wait" />
        <circle cx={period / 2} cy={period / 2} r={period / 6.5} className="hf-fill-on-wait" />
      </pattern>
    </defs>
  );
};
