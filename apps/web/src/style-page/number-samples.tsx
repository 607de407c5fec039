import { useState, type ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { CautionList } from '../ui/caution-slot.js';
import { EmptyState } from '../ui/empty-state.js';
import { NumberPad } from '../ui/fields/number-pad.js';
import { Notice } from '../ui/notice.js';
import { Plate } from '../ui/plate.js';
import { Table } from '../ui/table.js';
import { useSampleTime } from './use-sample-time.js';

const TableSample = (): ReactElement => {
  const { t, format } = useText();
  const at = useSampleTime();
  const rows = [
    { plate: 'KV 418 T', fixes: 1, what: t('style.tablePart'), since: at('09:24'), liftMinutes: 192 },
    { plate: 'SO 5012', fixes: 0, what: t('style.tableCall'), since: at('11:02'), liftMinutes: 48 },
  ];
  return (
    <Table
      caption={t('style.table')}
      rows={rows}
      rowKey={(row) => row.plate}
      columns={[
        {
          key: 'vehicle',
          heading: t('style.tableVehicle'),
          isRowHeading: true,
          cell: (row) => <Plate plate={row.plate} fixCount={row.fixes} />,
        },
        { key: 'what', heading: t('style.tableWhat'), cell: (row) => row.what },
        { key: 'since', heading: t('style.tableSince'), align: 'end', cell: (row) => format.time(row.since) },
        { key: 'lift', heading: t('style.tableLift'), align: 'end', cell: (row) => format.duration(row.liftMinutes) },
      ]}
    />
  );
};

const PadSample = (): ReactElement => {
  const { t } = useText();
  const [value, setValue] = useState('');
  const [unit, setUnit] = useState<'km' | 'mi'>('mi');
  return (
    <NumberPad
      label={t('style.padLabel')}
      value={value}
      onChange={setValue}
      unit={unit}
      onUnit={setUnit}
      units={[
        { value: 'mi', label: 'mi' },
        { value: 'km', label: 'km' },
      ]}
      last={{ value: '41980', words: t('style.padLast') }}
      onDone={() => {
        setValue('');
      }}
    />
  );
};

export const NumberSamples = (): ReactElement => {
  const { t } = useText();
  const way = { to: '/style', label: t('style.refusalWay') };
  return (
    <div className="hf-style-pair">
      <PadSample />
      <div className="hf-stack">
        <CautionList
          cautions={[
            { id: 'live', kind: 'highVoltage', words: `${t('mark.highVoltage')}: ${t('style.sampleLive')}` },
            { id: 'oil', kind: 'caution', words: t('style.sampleCaution') },
          ]}
        />
        <Notice
          kind="refusal"
          heading={t('style.refusal')}
          lines={[
            { sentence: t('style.refusalClock'), way },
            { sentence: t('style.refusalConcern'), way },
          ]}
        />
        <Notice kind="note" lines={[{ sentence: t('style.note') }]} />
        <TableSample />
        <EmptyState heading={t('style.emptyHeading')}>
          <p>{t('style.emptyWords')}</p>
        </EmptyState>
      </div>
    </div>
  );
};
