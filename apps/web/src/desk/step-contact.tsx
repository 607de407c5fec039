import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { NumberField } from '../pieces/number-field.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf, said } from '../pieces/typed.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import type { Draft } from './draft.js';
import { useCustomer } from './use-customer.js';

type StepProps = {
  readonly view: VehicleView;
  readonly draft: Draft;
  readonly onChange: (part: Partial<Draft>) => void;
};

const somebodyNew = 'new';

type Contact = VehicleView['contacts'][number];

/** Those who still speak for the customer; of the vehicle's own customer they come with its read. */
export const useContacts = (view: VehicleView, customerId: string | null): Contact[] => {
  const other = useCustomer(customerId === view.customer?.id ? null : customerId);
  const contacts = customerId !== null && customerId === view.customer?.id ? view.contacts : (other?.contacts ?? []);
  return contacts.filter((contact) => contact.endedAt === null);
};

/** What a known contact may do, as one sentence. */
const Powers = ({ contact }: { readonly contact: Contact }): ReactElement => {
  const { t, format } = useText();
  const { mayBring, mayCollect, mayAgreeAny, mayAgreeUpTo } = contact;
  const may = [
    ...(mayBring ? [t('checkIn.mayBringIt')] : []),
    ...(mayAgreeAny
      ? [t('checkIn.mayAgreeAnyIt')]
      : mayAgreeUpTo === null
        ? []
        : [t('checkIn.mayAgreeIt', { amount: format.money(mayAgreeUpTo) })]),
    ...(mayCollect ? [t('checkIn.mayCollectIt')] : []),
  ];
  return (
    <p className="hf-small hf-quiet">
      {may.length === 0 ? t('checkIn.mayNothing') : t('checkIn.contactMay', { may: may.join(', ') })}
    </p>
  );
};

/** Whether the customer is a fleet, whose people agree to nothing unless it is said. */
const useIsFleet = (view: VehicleView, { customerId, fleet }: Draft): boolean => {
  const other = useCustomer(customerId === view.customer?.id ? null : customerId)?.customer;
  if (customerId === null) return said(fleet) !== undefined;
  const customer = customerId === view.customer?.id ? view.customer : other;
  return customer?.fleet != null;
};

/** Somebody whom the shop does not know yet, with what they may do. */
const NewContact = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  const { currency } = useShopSettings();
  const amount = decimalOf(draft.agreeUpTo);
  const isFleet = useIsFleet(view, draft);
  const agreesAny = draft.agreeAny ?? !isFleet;
  return (
    <>
      <Field
        label={t('checkIn.contactName')}
        value={draft.contactName}
        onChange={(contactName) => {
          onChange({ contactName });
        }}
      />
      <Field
        label={t('checkIn.phone')}
        type="tel"
        value={draft.phone}
        onChange={(phone) => {
          onChange({ phone });
        }}
      />
      <Tick
        label={t('checkIn.mayBring')}
        value={draft.mayBring}
        onChange={(mayBring) => {
          onChange({ mayBring });
        }}
      />
      <Tick
        label={t('checkIn.agreeAny')}
        value={agreesAny}
        onChange={(agreeAny) => {
          onChange({ agreeAny });
        }}
      />
      {!agreesAny && (
        <NumberField
          label={t('checkIn.agreeUpTo', { currency })}
          hint={t('checkIn.agreeHint')}
          value={draft.agreeUpTo}
          onChange={(agreeUpTo) => {
            onChange({ agreeUpTo });
          }}
          unit={currency}
          units={[{ value: currency, label: currency }]}
          places={2}
          wrong={amount === null ? t('piece.wrong.amount') : null}
        />
      )}
      <Tick
        label={t('checkIn.mayCollect')}
        value={draft.mayCollect}
        onChange={(mayCollect) => {
          onChange({ mayCollect });
        }}
      />
    </>
  );
};

/** Who is asked and called: a known contact of the customer, or a new one with what they may agree to. */
export const StepContact = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  const known = useContacts(view, draft.customerId);
  const chosen = known.find((contact) => contact.id === draft.contactId);
  return (
    <fieldset className="hf-group">
      <legend>{t('checkIn.contact')}</legend>
      {known.length > 0 && (
        <Select
          label={t('checkIn.contact')}
          value={draft.contactId ?? somebodyNew}
          onChange={(id) => {
            onChange({ contactId: id === somebodyNew ? null : id });
          }}
          options={[
            ...known.map((contact) => ({
              value: contact.id,
              label: [contact.name, contact.phone].filter((one) => one !== null).join(', '),
            })),
            { value: somebodyNew, label: t('checkIn.newContact') },
          ]}
        />
      )}
      {chosen !== undefined && <Powers contact={chosen} />}
      {draft.contactId === null && <NewContact view={view} draft={draft} onChange={onChange} />}
    </fieldset>
  );
};
