import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';

import { CautionSlot, type ShownCaution } from '../ui/caution-slot.js';
import { Plate } from '../ui/plate.js';
import { BayStrip } from './bay-strip.js';
import { useStripBoard } from './strip-board.js';
import type { StripData } from './strip-model.js';
import { stripScale } from './strip-scale.js';
import type { StripSubject } from './strip-words.js';

/** A press on the stretch without a reason, from `from` (epoch ms) to now. */
export type AskWhy = { readonly from: number; readonly press: () => void };

export type BayRowProps = Omit<StripData, 'from' | 'to' | 'now'> & {
  readonly subject: StripSubject;
  readonly cautions: readonly ShownCaution[];
  /** One short phrase for the state, "waits for part, 3 h 12". */
  readonly state: string;
  /** When it is ready, in words; may hold a link. */
  readonly ready?: ReactNode;
  /** What can be done with this row, such as a place to put a picked vehicle. */
  readonly act?: ReactNode;
  /** What can be done with the vehicle there, beside its plate. */
  readonly vehicleAct?: ReactNode;
  /** Where a tap on the plate leads. */
  readonly vehiclePath?: string;
  /** The number of the job there. */
  readonly job?: number;
  /** Picked to be placed elsewhere: a double frame. */
  readonly isPicked?: boolean;
  readonly askWhy?: AskWhy;
  /** What a press on the state means, such as the reason it asks for; under the state. */
  readonly stateAct?: ReactNode;
  /** The key on a keyboard that goes to this row. */
  readonly keyCap?: string;
};

/**
 * Lies over the dots and takes a tap of finger or mouse there; by keyboard and for screen readers the same act stands
 * among the acts beside the plate.
 */
const DotsPress = ({ from, press }: AskWhy): ReactElement => {
  const board = useStripBoard();
  const scale = stripScale(board, board.width);
  const [left, right] = [scale(from), scale(board.now)];
  const width = Math.max(44, right - left);
  return (
    <button
      type="button"
      className="hf-dots-press"
      tabIndex={-1}
      aria-hidden="true"
      style={{ insetInlineStart: `${String(right - width)}px`, inlineSize: `${String(width)}px` }}
      onClick={press}
    />
  );
};

/** One row of the board: caution slot, bay, plate with its patch slot, state, strip. */
export const BayRow = (props: BayRowProps): ReactElement => {
  const {
    subject,
    cautions,
    state,
    ready,
    act,
    vehicleAct,
    vehiclePath,
    job,
    isPicked,
    askWhy,
    stateAct,
    keyCap,
    ...strip
  } = props;
  const { width, asTable, from, to, now } = useStripBoard();
  const plate = subject.vehicle !== undefined && <Plate plate={subject.vehicle} fixCount={subject.fixCount ?? 0} />;
  return (
    <article
      className="hf-bay-row"
      aria-label={subject.name}
      tabIndex={-1}
      data-bay={subject.name}
      {...(job === undefined ? {} : { 'data-job': job })}
      {...(isPicked === true ? { 'data-picked': true } : {})}
    >
      <div className="hf-bay-head">
        <CautionSlot cautions={cautions} />
        <div className="hf-bay-name">
          <h3>
            {subject.name}
            {keyCap !== undefined && <kbd aria-hidden="true">{keyCap}</kbd>}
          </h3>
          {vehiclePath === undefined ? (
            plate
          ) : (
            <div className="hf-bay-vehicle">
              <Link className="hf-plate-link" href={vehiclePath}>
                {plate}
              </Link>
              {vehicleAct}
            </div>
          )}
        </div>
        <div className="hf-bay-words">
          <span>{state}</span>
          {stateAct}
          {ready !== undefined && <span className="hf-quiet">{ready}</span>}
        </div>
      </div>
      <div className="hf-bay-strip">
        <div className="hf-bay-drawn">
          <BayStrip {...strip} from={from} to={to} now={now} width={width} subject={subject} asTable={asTable} />
          {askWhy !== undefined && !asTable && <DotsPress {...askWhy} />}
        </div>
        {act}
      </div>
    </article>
  );
};
