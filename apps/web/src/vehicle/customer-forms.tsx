import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';

type ChangeCustomerProps = {
  readonly customer: {
    readonly id: string;
    readonly version: number;
    readonly name: string;
    readonly fleet: string | null;
  };
  readonly onClose: () => void;
};

/** Another name for a customer, or another fleet. */
export const ChangeCustomerForm = ({ customer, onClose }: ChangeCustomerProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [name, setName] = useState(customer.name);
  const [fleet, setFleet] = useState(customer.fleet ?? '');
  const send = async (): Promise<void> => {
    const what = { name: name.trim(), fleet: said(fleet) ?? null };
    const input = { customerId: customer.id, version: customer.version, ...what };
    if (await sending.run('changeCustomer', input, { text: 'vehicle.done.customer', values: { name: what.name } }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('vehicle.changeCustomer', { name: customer.name })}
      command="changeCustomer"
      act={t('vehicle.keepIt')}
      sending={sending}
      ready={said(name) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field label={t('vehicle.customerName')} value={name} onChange={setName} isRequired />
      <Field label={t('vehicle.fleet')} value={fleet} onChange={setFleet} />
    </FormSheet>
  );
};
