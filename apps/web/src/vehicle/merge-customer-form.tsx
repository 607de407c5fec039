import type { CustomerView, VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useRead } from '../live/reads.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { said } from '../pieces/typed.js';
import { useText, type Text } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { differing, moving, type Compared } from './compared.js';
import { FindRecord } from './find-record.js';
import { SideBySide } from './side-by-side.js';

const comparedOf = (kept: CustomerView, other: CustomerView, text: Text): (Compared & { readonly label: string })[] => {
  const { t, format } = text;
  const facts = [
    { name: 'name', kept: kept.customer.name, other: other.customer.name },
    { name: 'fleet', kept: kept.customer.fleet, other: other.customer.fleet },
  ] as const;
  const plates = (view: CustomerView): string => view.vehicles.map(({ plate }) => plate).join(', ') || '–';
  const people = (view: CustomerView): string => view.contacts.map(({ name }) => name).join(', ') || '–';
  const both = (name: 'contacts' | 'vehicles', write: (view: CustomerView) => string) =>
    other[name].length === 0 ? [] : [{ name, kept: write(kept), other: write(other), after: 'both' as const }];
  const counts = [{ name: 'jobs', kept: kept.jobs.length, other: other.jobs.length }] as const;
  return [
    ...differing(facts, t('vehicle.unknown')).map((line) => ({
      ...line,
      label: t(line.name === 'name' ? 'vehicle.customerName' : 'vehicle.fleet'),
    })),
    ...[...both('contacts', people), ...both('vehicles', plates), ...moving(counts, format.number)].map((line) => ({
      ...line,
      label: t(`records.count.${line.name}`),
    })),
  ];
};

const useCustomerView = (id: string | null): CustomerView | undefined => {
  const read = useRead<CustomerView>(id === null ? null : `/api/customers/${id}`, ['customers']);
  return read.data?.customer.id === id ? read.data : undefined;
};

type MergeProps = { readonly customer: NonNullable<VehicleView['customer']>; readonly onClose: () => void };

/** Two records of one customer become this one. */
export const MergeCustomerForm = ({ customer, onClose }: MergeProps): ReactElement => {
  const text = useText();
  const { t } = text;
  const sending = useSend();
  const [chosen, setChosen] = useState<{ id: string; title: string; under: string } | null>(null);
  const [words, setWords] = useState('');
  const kept = useCustomerView(customer.id);
  const other = useCustomerView(chosen?.id ?? null);
  const send = async (): Promise<void> => {
    if (other === undefined || kept === undefined) return;
    const { id: customerId, version } = kept.customer;
    const { id: otherId, version: otherVersion } = other.customer;
    if (await sending.run('mergeCustomers', { customerId, version, otherId, otherVersion, words: words.trim() }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('records.mergeCustomer.heading', { name: customer.name })}
      command="mergeCustomers"
      act={t('records.merge.act')}
      sending={sending}
      ready={other !== undefined && kept !== undefined && said(words) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('records.mergeCustomer.words', { name: customer.name })}</p>
      <FindRecord
        kind="customer"
        label={t('records.mergeCustomer.other')}
        except={customer.id}
        chosen={chosen}
        onChosen={setChosen}
      />
      {other !== undefined && kept !== undefined && (
        <>
          <SideBySide
            caption={t('records.differs')}
            kept={t('records.thisOne')}
            other={t('records.theOther')}
            lines={comparedOf(kept, other, text)}
          />
          <TextArea label={t('records.merge.why')} value={words} onChange={setWords} rows={2} isRequired />
        </>
      )}
    </FormSheet>
  );
};
