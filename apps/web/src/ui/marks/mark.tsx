// ui/marks/ hides how each mark is drawn. It guarantees that a mark is told apart by its shape alone, that it always has a
// name (its title) unless the word stands beside it, and that each is drawn once: the Shape for use inside a strip, the
// Mark for use in a line of text.
import type { ReactElement, ReactNode } from 'react';

import './marks.css';

export type MarkProps = {
  /** What a screen reader and the tooltip say; null where the same word stands beside the mark. */
  readonly title: string | null;
  /** Height in CSS pixels. */
  readonly size?: number;
};

type FrameProps = MarkProps & {
  readonly className: string;
  /** Width and height of the drawing's own grid. */
  readonly grid?: readonly [width: number, height: number];
  readonly children: ReactNode;
};

/** The SVG around a shape: never stretched, named or hidden from screen readers. */
export const Mark = ({ title, size = 24, className, grid = [24, 24], children }: FrameProps): ReactElement => {
  const [width, height] = grid;
  const named = title === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': title };
  return (
    <svg
      {...named}
      className={`hf-mark ${className}`}
      width={(size * width) / height}
      height={size}
      viewBox={`0 0 ${String(width)} ${String(height)}`}
      focusable="false"
    >
      {title !== null && <title>{title}</title>}
      {children}
    </svg>
  );
};
