import type { ReactElement } from 'react';
import { Link } from 'wouter';

import './notice.css';

export type NoticeLine = {
  /** A whole sentence for somebody at a bay. */
  readonly sentence: string;
  /** The way to mend it. */
  readonly way?: { readonly to: string; readonly label: string };
};

type NoticeProps = {
  /** `refusal` is announced at once; `note` waits for its turn. */
  readonly kind: 'refusal' | 'note';
  readonly heading?: string;
  readonly lines: readonly NoticeLine[];
};

/** What stands in the way, all of it at once, each with a way to it. */
export const Notice = ({ kind, heading, lines }: NoticeProps): ReactElement => (
  <div className={`hf-notice hf-notice-${kind}`} role={kind === 'refusal' ? 'alert' : 'status'}>
    {heading !== undefined && <p className="hf-notice-heading">{heading}</p>}
    <ul>
      {lines.map((line) => (
        <li key={line.sentence}>
          <span>{line.sentence}</span>
          {line.way !== undefined && <Link href={line.way.to}>{line.way.label}</Link>}
        </li>
      ))}
    </ul>
  </div>
);
