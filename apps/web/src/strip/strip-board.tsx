import { createContext, useContext, useState, type ReactElement, type ReactNode } from 'react';

import './strip.css';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { TimeAxis } from './time-axis.js';
import { useMeasuredWidth } from './use-measured-width.js';

type Window = { readonly from: number; readonly to: number; readonly now: number };
type Board = Window & { readonly width: number; readonly asTable: boolean };

const BoardContext = createContext<Board | null>(null);

/** The window, width and way of showing that all rows of one board share. Refuses to be used outside a StripBoard. */
export const useStripBoard = (): Board => {
  const board = useContext(BoardContext);
  if (board === null) throw new Error('A BayRow stands outside of a StripBoard.');
  return board;
};

type BoardProps = Window & {
  readonly label: string;
  /** BayRows in the order of the building. */
  readonly children: ReactNode;
};

/** Rows of strips under one time axis; one switch turns all of them into tables. */
export const StripBoard = ({ label, children, ...window }: BoardProps): ReactElement => {
  const { t } = useText();
  const [axis, width] = useMeasuredWidth<HTMLDivElement>();
  const [asTable, setAsTable] = useState(false);
  return (
    <BoardContext value={{ ...window, width, asTable }}>
      <section className="hf-strip-board" aria-label={label}>
        <div className="hf-bay-row hf-bay-axis">
          <div className="hf-bay-axis-head">
            <Button
              size="small"
              look="plain"
              onPress={() => {
                setAsTable(!asTable);
              }}
            >
              {t(asTable ? 'strip.asDrawing' : 'strip.asTable')}
            </Button>
          </div>
          <div className="hf-bay-strip" ref={axis}>
            {!asTable && <TimeAxis {...window} width={width} />}
          </div>
        </div>
        {children}
      </section>
    </BoardContext>
  );
};
