import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';

type DeskIndexProps = {
  readonly items: readonly { readonly id: string; readonly name: string; readonly count: number | null }[];
};

/** How many of each there are, each with a way down to them: what a glance at the desk is for. */
export const DeskIndex = ({ items }: DeskIndexProps): ReactElement => {
  const { t } = useText();
  return (
    <nav className="hf-desk-index" aria-label={t('desk.index')}>
      <ul>
        {items.map(({ id, name, count }) => (
          <li key={id}>
            <a href={`#${id}`} className={count === 0 ? 'hf-quiet' : undefined}>
              {name}
              {count !== null && <strong className="hf-figures">{count}</strong>}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
};
