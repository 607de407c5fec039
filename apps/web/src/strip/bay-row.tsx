import type { ReactElement, ReactNode } from 'react';

import { CautionSlot, type ShownCaution } from '../ui/caution-slot.js';
import { Plate } from '../ui/plate.js';
import { BayStrip } from './bay-strip.js';
import { useStripBoard } from './strip-board.js';
import type { StripData } from './strip-model.js';
import type { StripSubject } from './strip-words.js';

export type BayRowProps = Omit<StripData, 'from' | 'to' | 'now'> & {
  readonly subject: StripSubject;
  readonly cautions: readonly ShownCaution[];
  /** One short phrase for the state, "waits for part, 3 h 12". */
  readonly state: string;
  /** When it is ready, in words; may hold a link. */
  readonly ready?: ReactNode;
  /** What can be done with this row, such as a place to put a picked vehicle. */
  readonly act?: ReactNode;
};

/** One row of the board: caution slot, bay, plate with its patch slot, state, strip. */
export const BayRow = (props: BayRowProps): ReactElement => {
  const { subject, cautions, state, ready, act, ...strip } = props;
  const { width, asTable, from, to, now } = useStripBoard();
  return (
    <article className="hf-bay-row" aria-label={subject.name}>
      <div className="hf-bay-head">
        <CautionSlot cautions={cautions} />
        <div className="hf-bay-name">
          <h3>{subject.name}</h3>
          {subject.vehicle !== undefined && <Plate plate={subject.vehicle} fixCount={subject.fixCount ?? 0} />}
        </div>
        <div className="hf-bay-words">
          <span>{state}</span>
          {ready !== undefined && <span className="hf-quiet">{ready}</span>}
        </div>
      </div>
      <div className="hf-bay-strip">
        <BayStrip {...strip} from={from} to={to} now={now} width={width} subject={subject} asTable={asTable} />
        {act}
      </div>
    </article>
  );
};
