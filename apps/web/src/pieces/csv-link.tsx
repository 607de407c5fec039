import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';

/** A list as a file for a spreadsheet. `path` is the list's own address. */
export const CsvLink = ({ path, list }: { readonly path: string; readonly list: string }): ReactElement => {
  const { t } = useText();
  return (
    <a
      className="hf-link-whole"
      href={`${path}${path.includes('?') ? '&' : '?'}format=csv`}
      download
      aria-label={t('csv.linkAbout', { list })}
    >
      {t('csv.link')}
    </a>
  );
};
