import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { MoneyField } from '../pieces/money-field.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf, said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';

/** A customer before any vehicle of theirs is here, with whoever is called. More contacts are added on the vehicle's page. */
export const NewCustomerForm = ({ onClose }: { readonly onClose: () => void }): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [name, setName] = useState('');
  const [fleet, setFleet] = useState('');
  const [contactName, setContactName] = useState('');
  const [phone, setPhone] = useState('');
  const [upTo, setUpTo] = useState('');
  // Until it is said, what the rule takes: a private customer's people speak for them, those of a fleet do not.
  const [saidAny, setSaidAny] = useState<boolean | null>(null);
  const mayAgreeAny = saidAny ?? said(fleet) === undefined;
  const amount = decimalOf(upTo);
  const send = async (): Promise<void> => {
    const contact = said(contactName);
    const may = { mayBring: true, mayCollect: true, mayAgreeAny };
    const contacts =
      contact === undefined
        ? undefined
        : [
            {
              contactId: newId(),
              name: contact,
              phone: said(phone),
              mayAgreeUpTo: mayAgreeAny ? undefined : (amount ?? undefined),
              ...may,
            },
          ];
    const input = { customerId: newId(), name: name.trim(), fleet: said(fleet), contacts };
    if (await sending.run('addCustomer', input, { text: 'customer.done', values: { name: name.trim() } })) onClose();
  };
  return (
    <FormSheet
      heading={t('customer.heading')}
      command="addCustomer"
      act={t('customer.act')}
      sending={sending}
      ready={said(name) !== undefined && amount !== null}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field label={t('customer.name')} value={name} onChange={setName} isRequired autoFocus />
      <Field label={t('checkIn.fleet')} hint={t('checkIn.fleetHint')} value={fleet} onChange={setFleet} />
      <fieldset className="hf-group">
        <legend>{t('customer.contact')}</legend>
        <Field label={t('customer.contactName')} value={contactName} onChange={setContactName} />
        <Field label={t('checkIn.phone')} type="tel" value={phone} onChange={setPhone} />
        <Tick label={t('checkIn.agreeAny')} value={mayAgreeAny} onChange={setSaidAny} />
        {!mayAgreeAny && (
          <MoneyField
            label={t('piece.contact.upTo')}
            hint={t('piece.contact.upToHint')}
            value={upTo}
            onChange={setUpTo}
          />
        )}
      </fieldset>
    </FormSheet>
  );
};
