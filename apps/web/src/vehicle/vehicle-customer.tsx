import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { AddContactForm, ChangeContactForm } from '../pieces/contact-forms.js';
import { ContactLog } from '../pieces/contact-log.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { StandingEntry } from '../pieces/standing-entry.js';
import { GiveStandingForm } from '../pieces/standing-forms.js';
import { useText } from '../text/use-text.js';
import { ChangeCustomerForm } from './customer-forms.js';

type Props = { readonly view: VehicleView };
type Contact = VehicleView['contacts'][number];

const ContactEntry = ({ contact }: { readonly contact: Contact }): ReactElement => {
  const { t, format } = useText();
  const { name, phone, mail, mayBring, mayCollect, mayAgreeAny, mayAgreeUpTo, endedAt } = contact;
  const may = [
    ...(mayBring ? [t('vehicle.may.bring')] : []),
    ...(mayAgreeAny
      ? [t('vehicle.may.agreeAny')]
      : mayAgreeUpTo === null
        ? []
        : [t('vehicle.may.agreeUpTo', { amount: format.money(mayAgreeUpTo) })]),
    ...(mayCollect ? [t('vehicle.may.collect')] : []),
  ];
  return (
    <Entry
      id={`contact-${contact.id}`}
      acts={
        <Opener command="changeContact" label={t('vehicle.changeContact')} look="plain" about={name}>
          {(close) => <ChangeContactForm contact={contact} onClose={close} />}
        </Opener>
      }
    >
      <p>
        <span className="hf-entry-title">{name}</span>
        {phone !== null && (
          <>
            {', '}
            <a className="hf-vehicle-phone" href={`tel:${phone}`}>
              {phone}
            </a>
          </>
        )}
        {mail !== null && (
          <>
            {', '}
            <a href={`mailto:${mail}`}>{mail}</a>
          </>
        )}
      </p>
      <p className="hf-small hf-quiet">
        {endedAt !== null
          ? t('vehicle.noContact', { at: format.date(Date.parse(endedAt)) })
          : may.length === 0
            ? t('vehicle.may.nothing')
            : may.join(' · ')}
      </p>
    </Entry>
  );
};

const Standings = ({ view, jobId }: Props & { readonly jobId: string | null }): ReactElement | null => {
  const { t } = useText();
  const { customer, standing } = view;
  if (customer === null) return null;
  return (
    <div className="hf-vehicle-under">
      <div className="hf-part-head">
        <h3>{t('line.standing')}</h3>
        <Opener command="giveStandingGoAhead" label={t('line.giveStanding')} look="plain">
          {(close) => (
            <GiveStandingForm
              customerId={customer.id}
              vehicleId={view.vehicle.id}
              jobId={jobId}
              asked={view.contacts.find((one) => one.endedAt === null)?.name ?? customer.name}
              onClose={close}
            />
          )}
        </Opener>
      </div>
      {standing.length === 0 ? (
        <p className="hf-quiet hf-small">{t('line.noStanding')}</p>
      ) : (
        <Entries>
          {standing.map((one) => (
            <StandingEntry key={one.id} standing={one} />
          ))}
        </Entries>
      )}
    </div>
  );
};

/** Whose vehicle it is: contacts and what each may do, what was agreed to in advance, what was said with them. */
export const VehicleCustomer = ({ view, jobId }: Props & { readonly jobId: string | null }): ReactElement => {
  const { t } = useText();
  const { customer, contactEntries } = view;
  const contacts = [...view.contacts].sort((a, b) => Number(a.endedAt !== null) - Number(b.endedAt !== null));
  return (
    <>
      <Part
        heading={t('vehicle.customer')}
        acts={
          customer !== null && (
            <>
              <Opener command="addContact" label={t('vehicle.addContact')}>
                {(close) => <AddContactForm customer={customer} onClose={close} />}
              </Opener>
              <Opener command="changeCustomer" label={t('vehicle.change')} look="plain" about={customer.name}>
                {(close) => <ChangeCustomerForm customer={customer} onClose={close} />}
              </Opener>
            </>
          )
        }
      >
        <p>
          <span className="hf-entry-title">{customer?.name ?? t('vehicle.nobody')}</span>
          {customer?.fleet != null && (
            <span className="hf-quiet"> {t('vehicle.inFleet', { fleet: customer.fleet })}</span>
          )}
        </p>
        <Entries>
          {contacts.map((contact) => (
            <ContactEntry key={contact.id} contact={contact} />
          ))}
        </Entries>
        <Standings view={view} jobId={jobId} />
      </Part>
      {contactEntries.length > 0 && (
        <Part heading={t('vehicle.contactLog')}>
          <ContactLog entries={contactEntries} />
        </Part>
      )}
    </>
  );
};
