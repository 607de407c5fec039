import type { ReactElement } from 'react';

type FigureProps = { readonly name: string; readonly value: string; readonly under: string };

/** One figure with its name above and what it means below; stands in a `dl`. */
export const Figure = ({ name, value, under }: FigureProps): ReactElement => (
  <div className="hf-figure">
    <dt>{name}</dt>
    <dd>
      <strong className="hf-figures">{value}</strong>
      <span className="hf-quiet hf-small">{under}</span>
    </dd>
  </div>
);
