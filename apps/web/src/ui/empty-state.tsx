import type { ReactElement, ReactNode } from 'react';

import './notice.css';

/** Nothing here: what that means, and what would make something appear. */
export const EmptyState = (props: { heading: string; children?: ReactNode }): ReactElement => (
  <div className="hf-empty">
    <strong>{props.heading}</strong>
    {props.children}
  </div>
);
