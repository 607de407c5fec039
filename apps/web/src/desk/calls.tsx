import type { Visit } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { GoAheadForm } from '../pieces/go-ahead-form.js';
import { Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { EmptyState } from '../ui/empty-state.js';
import { askedLines } from './asked-lines.js';
import { DeskRow } from './desk-row.js';

const Call = ({ visit }: { readonly visit: Visit }): ReactElement => {
  const { t, format } = useText();
  const contacts = useBoard().tables.contact;
  const now = useNow(60_000);
  const contact = visit.contact ?? [...contacts.values()].find((one) => one.customerId === visit.customer?.id) ?? null;
  const name = contact?.name ?? visit.customer?.name ?? null;
  const agrees = contact?.mayAgreeAny
    ? t('desk.agreesAny')
    : contact?.mayAgreeUpTo != null
      ? t('desk.agrees', { amount: format.money(contact.mayAgreeUpTo) })
      : null;
  return (
    <DeskRow
      visit={visit}
      under={
        <>
          {name}
          {agrees !== null && `, ${agrees}`}
        </>
      }
      acts={
        contact?.phone == null ? (
          <span className="hf-small hf-quiet">{t('desk.noPhone')}</span>
        ) : (
          <a className="hf-desk-phone" href={`tel:${contact.phone}`}>
            {contact.phone}
          </a>
        )
      }
    >
      <ul className="hf-desk-lines">
        {askedLines(visit).map((line) => (
          <li key={line.id}>
            <span className="hf-desk-line">
              {line.title}
              <span className="hf-small hf-quiet">
                {' '}
                {t('desk.askedSince', { since: format.moment(line.effectiveAt, now) })}
              </span>
            </span>
            <span className="hf-desk-amount">{line.price === null ? t('desk.noPrice') : format.money(line.price)}</span>
            <Opener command="recordGoAhead" label={t('desk.word')} about={line.title}>
              {(close) => <GoAheadForm line={line} jobId={visit.job.id} asked={name} onClose={close} />}
            </Opener>
          </li>
        ))}
      </ul>
    </DeskRow>
  );
};

/** Lines that are with the customer: who is called, under which number, about what amount. */
export const Calls = ({ visits }: { readonly visits: readonly Visit[] }): ReactElement => {
  const { t } = useText();
  return (
    <Part heading={t('desk.calls')} under={t('desk.callsUnder')}>
      {visits.length === 0 ? (
        <EmptyState heading={t('desk.noCalls')}>{t('desk.noCallsWords')}</EmptyState>
      ) : (
        <ul className="hf-desk-list">
          {visits.map((visit) => (
            <Call key={visit.job.id} visit={visit} />
          ))}
        </ul>
      )}
    </Part>
  );
};
