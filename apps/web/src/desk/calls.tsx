import type { Board, Visit } from '@holdfast/board';
import { useState, type ReactElement, type ReactNode } from 'react';

import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { AddContactForm } from '../pieces/contact-forms.js';
import { ContactEntryForm } from '../pieces/contact-entry-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { Part } from '../pieces/part.js';
import { useText, type Text } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { askedLines, standingOfVisit } from './asked-lines.js';
import { useCallAnswers } from './call-answers.js';
import { CallLines } from './call-lines.js';
import { DeskRow } from './desk-row.js';
import { contactOf, isDue, type CallToMake } from './who-to-call.js';

type Who = Pick<CallToMake, 'customer' | 'contact'>;

/** Who is rung, and what this person may agree to. */
const whoAgrees = ({ customer, contact }: Who, { t, format }: Text): string => {
  const agrees = contact?.mayAgreeAny
    ? t('desk.agreesAny')
    : contact?.mayAgreeUpTo != null
      ? t('desk.agrees', { amount: format.money(contact.mayAgreeUpTo) })
      : null;
  const name = contact?.name ?? customer?.name;
  const firm = customer?.name === name ? null : customer?.name;
  return [name, firm, agrees].filter((words) => words != null).join(', ');
};

/** The number to dial; where there is none, a way to give one. */
const Dial = ({ customer, contact }: Who): ReactElement => {
  const { t } = useText();
  if (contact?.phone != null) {
    return (
      <a className="hf-desk-phone" href={`tel:${contact.phone}`}>
        {contact.phone}
      </a>
    );
  }
  return (
    <>
      <span className="hf-small hf-quiet">{t('desk.noPhone')}</span>
      {customer !== null && (
        <Opener command="addContact" label={t('desk.addContact')} look="plain" about={customer.name}>
          {(close) => <AddContactForm customer={customer} onClose={close} />}
        </Opener>
      )}
    </>
  );
};

/** What a call is about, in words. */
const aboutWords = (board: Board, { call, visit, followUp }: CallToMake, { t }: Text): string => {
  switch (call.reason) {
    case 'goAhead':
      return t('desk.call.goAhead', { count: visit === null ? 0 : askedLines(board, visit).length });
    case 'ready':
      return t('desk.call.ready');
    case 'partsIn':
      return followUp === null ? t('desk.call.partsInOnly') : t('desk.call.partsIn', { title: followUp.title });
    case 'other':
      return call.words === null ? t('desk.call.otherOnly') : t('desk.call.other', { words: call.words });
  }
};

type RowProps = { readonly toMake: CallToMake; readonly now: number; readonly onRecord: () => void };

const Call = ({ toMake, now, onRecord }: RowProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const board = useBoard();
  const may = useMay();
  const { call, of, visit, customer, contact } = toMake;
  const name = contact?.name ?? customer?.name ?? null;
  const since = t('desk.callSince', { since: format.moment(call.effectiveAt, now) });
  const next =
    call.nextTryAt === null
      ? null
      : t(isDue(call, now) ? 'desk.callDue' : 'desk.callNext', { at: format.moment(call.nextTryAt, now) });
  return (
    <DeskRow
      of={of}
      under={whoAgrees(toMake, text)}
      acts={
        <>
          <Dial customer={customer} contact={contact} />
          {may.command('recordContact') && (
            <Button size="small" label={`${t('desk.recordCall')}: ${of.vehicle.plate}`} onPress={onRecord}>
              {t('desk.recordCall')}
            </Button>
          )}
        </>
      }
    >
      <p>
        <span className="hf-entry-title">{aboutWords(board, toMake, text)}</span>{' '}
        <span className="hf-small hf-quiet">{[since, next].filter((words) => words !== null).join(' · ')}</span>
      </p>
      {call.reason === 'goAhead' && visit !== null && <CallLines board={board} visit={visit} name={name} now={now} />}
    </DeskRow>
  );
};

type SheetProps = { readonly toMake: CallToMake; readonly onClose: () => void };
type SheetFrame = SheetProps & { readonly more?: Parameters<typeof ContactEntryForm>[0]['more'] };

const CallSheet = ({ toMake, more, onClose }: SheetFrame): ReactElement => {
  const text = useText();
  const board = useBoard();
  const { call, of, customer, contact } = toMake;
  return (
    <ContactEntryForm
      vehicleId={of.vehicle.id}
      plate={of.vehicle.plate}
      {...(call.jobId === null ? {} : { jobId: call.jobId })}
      {...(call.followUpId === null ? {} : { followUpId: call.followUpId })}
      callId={call.id}
      asked={contact?.name ?? customer?.name ?? null}
      about={aboutWords(board, toMake, text)}
      {...(more === undefined ? {} : { more })}
      onClose={onClose}
    />
  );
};

/** A call about the go-ahead: the answers on the lines are recorded with it. */
const GoAheadCallSheet = ({ visit, ...sheet }: SheetProps & { readonly visit: Visit }): ReactElement => {
  const board = useBoard();
  const standing = standingOfVisit(board, visit, useNow(60_000));
  const more = useCallAnswers({ visit, lines: askedLines(board, visit), standing });
  return <CallSheet {...sheet} more={more} />;
};

/** Lines that are with the customer though nobody has to ring: the answer is recorded when they ring back. */
const Awaited = ({ visit, now }: { readonly visit: Visit; readonly now: number }): ReactElement => {
  const text = useText();
  const board = useBoard();
  const who = { customer: visit.customer, contact: contactOf(board, visit, visit.job.customerId) };
  return (
    <DeskRow of={visit} under={whoAgrees(who, text)} acts={<Dial {...who} />}>
      <CallLines board={board} visit={visit} name={who.contact?.name ?? visit.customer?.name ?? null} now={now} />
    </DeskRow>
  );
};

const List = ({ children }: { readonly children: ReactNode }): ReactElement => (
  <ul className="hf-desk-list">{children}</ul>
);

type CallsProps = { readonly calls: readonly CallToMake[]; readonly visits: readonly Visit[] };

/** Who is rung under which number about what, since when; then the visits whose answer is awaited. */
export const Calls = ({ calls, visits }: CallsProps): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const now = useNow(60_000);
  // Kept here and not in its row: the row goes as soon as the call is in the log, the form has more to record then.
  const [recording, setRecording] = useState<CallToMake | null>(null);
  const close = (): void => {
    setRecording(null);
  };
  const called = new Set(
    calls.flatMap(({ call }) => (call.reason === 'goAhead' && call.jobId !== null ? [call.jobId] : [])),
  );
  const awaited = visits.filter((visit) => !called.has(visit.job.id) && askedLines(board, visit).length > 0);
  const current = visits.find((visit) => visit.job.id === recording?.visit?.job.id) ?? recording?.visit ?? null;
  return (
    <>
      <Part id="desk-calls" heading={t('desk.calls')} under={t('desk.callsUnder')}>
        {calls.length === 0 ? (
          <EmptyState heading={t('desk.noCalls')}>{t('desk.noCallsWords')}</EmptyState>
        ) : (
          <List>
            {calls.map((toMake) => (
              <Call
                key={toMake.call.id}
                toMake={toMake}
                now={now}
                onRecord={() => {
                  setRecording(toMake);
                }}
              />
            ))}
          </List>
        )}
      </Part>
      {awaited.length > 0 && (
        <Part heading={t('desk.answered')} under={t('desk.answeredUnder')}>
          <List>
            {awaited.map((visit) => (
              <Awaited key={visit.job.id} visit={visit} now={now} />
            ))}
          </List>
        </Part>
      )}
      {recording?.call.reason === 'goAhead' && current !== null && (
        <GoAheadCallSheet toMake={recording} visit={current} onClose={close} />
      )}
      {recording !== null && (recording.call.reason !== 'goAhead' || current === null) && (
        <CallSheet toMake={recording} onClose={close} />
      )}
    </>
  );
};
