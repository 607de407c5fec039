import type { VehicleView } from '@holdfast/contract';
import { erasedText } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useNow } from '../live/use-board.js';
import { useNameWords } from '../pieces/customer-name.js';
import { AddContactForm, ChangeContactForm } from '../pieces/contact-forms.js';
import { ContactLog } from '../pieces/contact-log.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { StandingEntry } from '../pieces/standing-entry.js';
import { GiveStandingForm } from '../pieces/standing-forms.js';
import { useText } from '../text/use-text.js';
import { ChangeCustomerForm } from './customer-forms.js';
import { EraseForm } from './erase-form.js';
import { MergeCustomerForm } from './merge-customer-form.js';
import { OwnerForm } from './owner-form.js';

type Props = { readonly view: VehicleView };
type Contact = VehicleView['contacts'][number];

const ContactEntry = ({ contact }: { readonly contact: Contact }): ReactElement => {
  const { t, format } = useText();
  const nameOf = useNameWords();
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
        name !== erasedText && (
          <Opener command="changeContact" label={t('vehicle.changeContact')} look="plain" about={name}>
            {(close) => <ChangeContactForm contact={contact} onClose={close} />}
          </Opener>
        )
      }
    >
      <p>
        <span className="hf-entry-title">{nameOf(name)}</span>
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
  const { t, format } = useText();
  const nameOf = useNameWords();
  const now = useNow(60_000);
  const { customer, contactEntries } = view;
  const isErased = customer !== null && customer.erasedAt !== null;
  const contacts = [...view.contacts].sort((a, b) => Number(a.endedAt !== null) - Number(b.endedAt !== null));
  return (
    <>
      <Part
        heading={t('vehicle.customer')}
        acts={
          <>
            {customer !== null && !isErased && (
              <>
                <Opener command="addContact" label={t('vehicle.addContact')}>
                  {(close) => <AddContactForm customer={customer} onClose={close} />}
                </Opener>
                <Opener command="changeCustomer" label={t('vehicle.change')} about={customer.name}>
                  {(close) => <ChangeCustomerForm customer={customer} onClose={close} />}
                </Opener>
              </>
            )}
            <Opener command="changeOwner" label={t('records.owner.open')} look="plain">
              {(close) => <OwnerForm view={view} onClose={close} />}
            </Opener>
            {customer !== null && !isErased && (
              <>
                <Opener
                  command="mergeCustomers"
                  label={t('records.mergeCustomer.open')}
                  look="plain"
                  about={customer.name}
                >
                  {(close) => <MergeCustomerForm customer={customer} onClose={close} />}
                </Opener>
                <Opener command="erasePersonalData" label={t('records.erase.open')} look="plain">
                  {(close) => <EraseForm customer={customer} onClose={close} />}
                </Opener>
              </>
            )}
          </>
        }
      >
        <p>
          <span className="hf-entry-title">{customer === null ? t('vehicle.nobody') : nameOf(customer.name)}</span>
          {customer?.fleet != null && (
            <span className="hf-quiet"> {t('vehicle.inFleet', { fleet: customer.fleet })}</span>
          )}
        </p>
        {customer?.erasedAt != null && (
          <p>{t('records.erasedAt', { at: format.moment(Date.parse(customer.erasedAt), now) })}</p>
        )}
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
