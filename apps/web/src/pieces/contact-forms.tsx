import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { MoneyField } from './money-field.js';
import { Tick } from './ticks.js';
import { decimalOf, said } from './typed.js';

/** What is said of somebody who brings, agrees or collects. */
export type ContactFacts = {
  readonly name: string;
  readonly phone: string;
  readonly mail: string;
  readonly mayBring: boolean;
  readonly mayCollect: boolean;
  readonly mayAgreeAny: boolean;
  /** As it was typed; empty: may not agree by amount. */
  readonly upTo: string;
};

const nobody: ContactFacts = {
  name: '',
  phone: '',
  mail: '',
  mayBring: true,
  mayCollect: true,
  mayAgreeAny: false,
  upTo: '',
};

const contactReady = ({ name, upTo }: ContactFacts): boolean => said(name) !== undefined && decimalOf(upTo) !== null;

type FieldsProps = { readonly facts: ContactFacts; readonly onChange: (facts: ContactFacts) => void };

const ContactFields = ({ facts, onChange }: FieldsProps): ReactElement => {
  const { t } = useText();
  const text = (key: 'name' | 'phone' | 'mail', type: 'text' | 'tel' | 'email'): ReactElement => (
    <Field
      label={t(`piece.contact.${key}`)}
      type={type}
      value={facts[key]}
      isRequired={key === 'name'}
      onChange={(value) => {
        onChange({ ...facts, [key]: value });
      }}
    />
  );
  const tick = (key: 'mayBring' | 'mayCollect' | 'mayAgreeAny'): ReactElement => (
    <Tick
      label={t(`piece.contact.${key}`)}
      value={facts[key]}
      onChange={(value) => {
        onChange({ ...facts, [key]: value });
      }}
    />
  );
  return (
    <>
      {text('name', 'text')}
      {text('phone', 'tel')}
      {text('mail', 'email')}
      <fieldset className="hf-group">
        <legend>{t('piece.contact.may')}</legend>
        {tick('mayBring')}
        {tick('mayCollect')}
        {tick('mayAgreeAny')}
        {!facts.mayAgreeAny && (
          <MoneyField
            label={t('piece.contact.upTo')}
            hint={t('piece.contact.upToHint')}
            value={facts.upTo}
            onChange={(upTo) => {
              onChange({ ...facts, upTo });
            }}
          />
        )}
      </fieldset>
    </>
  );
};

type AddContactProps = {
  readonly customer: { readonly id: string; readonly name: string };
  readonly onClose: () => void;
};

/** Somebody who may bring a vehicle of this customer, give the go-ahead up to an amount, or collect it. */
export const AddContactForm = ({ customer, onClose }: AddContactProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [facts, setFacts] = useState(nobody);
  const send = async (): Promise<void> => {
    const { mayBring, mayCollect, mayAgreeAny } = facts;
    const who = { name: facts.name.trim(), phone: said(facts.phone), mail: said(facts.mail) };
    const upTo = mayAgreeAny ? undefined : (decimalOf(facts.upTo) ?? undefined);
    const may = { mayBring, mayCollect, mayAgreeAny, mayAgreeUpTo: upTo };
    const input = { contactId: newId(), customerId: customer.id, ...who, ...may };
    if (await sending.run('addContact', input, { text: 'piece.done.contact', values: { name: who.name } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.contact.heading', { customer: customer.name })}
      command="addContact"
      act={t('piece.contact.add')}
      sending={sending}
      ready={contactReady(facts)}
      onSend={() => void send()}
      onClose={onClose}
    >
      <ContactFields facts={facts} onChange={setFacts} />
    </FormSheet>
  );
};

type ChangeContactProps = {
  readonly contact: {
    readonly id: string;
    readonly version: number;
    readonly name: string;
    readonly phone: string | null;
    readonly mail: string | null;
    readonly mayBring: boolean;
    readonly mayCollect: boolean;
    readonly mayAgreeAny: boolean;
    readonly mayAgreeUpTo: string | null;
    readonly endedAt: string | null;
  };
  readonly onClose: () => void;
};

/** What a contact may do and how they are reached, or that they no longer are one. */
export const ChangeContactForm = ({ contact, onClose }: ChangeContactProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [isContact, setIsContact] = useState(contact.endedAt === null);
  const [facts, setFacts] = useState<ContactFacts>({
    name: contact.name,
    phone: contact.phone ?? '',
    mail: contact.mail ?? '',
    mayBring: contact.mayBring,
    mayCollect: contact.mayCollect,
    mayAgreeAny: contact.mayAgreeAny,
    upTo: contact.mayAgreeUpTo ?? '',
  });
  const send = async (): Promise<void> => {
    const { mayBring, mayCollect, mayAgreeAny } = facts;
    const who = { name: facts.name.trim(), phone: said(facts.phone) ?? null, mail: said(facts.mail) ?? null };
    const upTo = mayAgreeAny ? null : (decimalOf(facts.upTo) ?? null);
    const may = { mayBring, mayCollect, mayAgreeAny, mayAgreeUpTo: upTo, active: isContact };
    const input = { contactId: contact.id, version: contact.version, ...who, ...may };
    const done = { text: 'piece.done.changeContact', values: { name: who.name } } as const;
    if (await sending.run('changeContact', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.contact.change', { name: contact.name })}
      command="changeContact"
      act={t('piece.contact.act')}
      sending={sending}
      ready={contactReady(facts)}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Tick label={t('piece.contact.isContact')} value={isContact} onChange={setIsContact} />
      <ContactFields facts={facts} onChange={setFacts} />
    </FormSheet>
  );
};
