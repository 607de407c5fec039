import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Table } from '../ui/table.js';
import type { Compared } from './compared.js';

type SideBySideProps = {
  readonly caption: string;
  readonly kept: string;
  readonly other: string;
  readonly lines: readonly (Compared & { readonly label: string })[];
};

/** What differs between two records, and what stands afterwards. */
export const SideBySide = ({ caption, kept, other, lines }: SideBySideProps): ReactElement => {
  const { t } = useText();
  const shown = (line: Compared, side: 'kept' | 'other'): ReactElement =>
    line.after === side || line.after === 'both' ? <strong>{line[side]}</strong> : <span>{line[side]}</span>;
  return (
    <>
      <Table
        caption={caption}
        rows={lines}
        rowKey={({ name }) => name}
        empty={<p>{t('records.nothingDiffers')}</p>}
        columns={[
          { key: 'name', heading: t('records.what'), isRowHeading: true, cell: ({ label }) => label },
          { key: 'kept', heading: t('records.kept', { name: kept }), cell: (line) => shown(line, 'kept') },
          { key: 'other', heading: t('records.other', { name: other }), cell: (line) => shown(line, 'other') },
        ]}
      />
      <p className="hf-quiet hf-small">{t('records.bold')}</p>
    </>
  );
};
