import type { ReactElement } from 'react';

import './strip.css';
import { useText } from '../text/use-text.js';
import { StripDrawing } from './strip-drawing.js';
import type { StripData } from './strip-model.js';
import { StripTable } from './strip-table.js';
import { stripSentence, type StripSubject } from './strip-words.js';

export type BayStripProps = StripData & {
  /** Width in CSS pixels for which the strip is drawn; inside a StripBoard leave it to BayRow. */
  readonly width: number;
  readonly subject: StripSubject;
  /** The table instead of the drawing. Without it the table is there for screen readers. */
  readonly asTable?: boolean;
};

/** The time of one bay spot, as a drawing with its sentence and as the same data in a table. */
export const BayStrip = ({ width, subject, asTable = false, ...data }: BayStripProps): ReactElement => {
  const words = useText();
  const sentence = stripSentence(subject, data, words);
  return (
    <div className="hf-strip">
      {asTable ? <p>{sentence}</p> : width > 0 && <StripDrawing {...data} width={width} sentence={sentence} />}
      <StripTable caption={subject.name} data={data} shown={asTable} />
    </div>
  );
};
