import { fieldsOfImport, type ImportField, type ImportMapping, neededByImport, type RowView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Select } from '../ui/fields/select.js';

const none = 'none';

type ColumnsProps = {
  readonly batch: RowView<'importBatch'>;
  readonly pending: boolean;
  readonly onCheck: (mapping: ImportMapping) => void;
  /** A further act beside the one that looks at the rows. */
  readonly beside: ReactElement | null;
};

/** Which column is which, proposed by the header and changed by hand. */
export const ColumnsPart = ({ batch, pending, onCheck, beside }: ColumnsProps): ReactElement => {
  const { t } = useText();
  const header = batch.header;
  const [mapping, setMapping] = useState<ImportMapping>(batch.mapping);
  const options = [
    { value: none, label: t('import.noColumn') },
    ...header.map((name, at) => ({
      value: String(at),
      label: name === '' ? `${t('import.column')} ${String(at + 1)}` : name,
    })),
  ];
  const name = (field: ImportField, column: string): void => {
    const { [field]: _before, ...others } = mapping;
    setMapping(column === none ? others : { ...others, [field]: Number(column) });
  };
  const complete = neededByImport[batch.kind].every((group) => group.some((field) => mapping[field] !== undefined));
  return (
    <Part heading={t('import.columns')} under={t('import.columnsUnder')}>
      <div className="hf-import-columns">
        {fieldsOfImport[batch.kind].map((field) => (
          <Select
            key={field}
            label={t(`import.field.${field}`)}
            value={mapping[field] === undefined ? none : String(mapping[field])}
            options={options}
            onChange={(column) => {
              name(field, column);
            }}
          />
        ))}
      </div>
      <p className="hf-quiet hf-small">{t(`import.needs.${batch.kind}`)}</p>
      <div className="hf-row">
        <Button
          look={batch.state === 'checked' ? 'frame' : 'ink'}
          isDisabled={!complete}
          isPending={pending}
          onPress={() => {
            onCheck(mapping);
          }}
        >
          {t(batch.state === 'staged' ? 'import.check' : 'import.checkAgain')}
        </Button>
        {beside}
      </div>
    </Part>
  );
};
