import type { Visit } from '@holdfast/board';
import { calendarOfBoard } from '@holdfast/board';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { Tick } from '../pieces/ticks.js';
import { isoOf, said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { LoadBeside } from './load-beside.js';

type FormProps = { readonly visit: Visit; readonly onClose: () => void };

/** A vehicle that was expected stands here: where, and with which key. */
export const ArrivalForm = ({ visit, onClose }: FormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [yardSpot, setYardSpot] = useState('');
  const [keyTag, setKeyTag] = useState('');
  const { plate } = visit.vehicle;
  const send = async (): Promise<void> => {
    const input = { placeId: newId(), jobId: visit.job.id, yardSpot: said(yardSpot), keyTag: said(keyTag) };
    if (await sending.run('recordArrival', input, { text: 'desk.arriveDone', values: { plate } })) onClose();
  };
  return (
    <FormSheet
      heading={t('desk.arriveHeading', { plate })}
      command="recordArrival"
      act={t('desk.arriveAct')}
      sending={sending}
      jobId={visit.job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-quiet">{t('desk.arriveUnder')}</p>
      <Field label={t('checkIn.yardSpot')} value={yardSpot} onChange={setYardSpot} code autoFocus />
      <Field label={t('checkIn.keyTag')} value={keyTag} onChange={setKeyTag} code />
    </FormSheet>
  );
};

/** A booked visit comes at another time; the load of that day stands beside it. */
export const ChangeBookingForm = ({ visit, onClose }: FormProps): ReactElement => {
  const { t } = useText();
  const calendar = calendarOfBoard(useBoard());
  const sending = useSend();
  const { job, vehicle } = visit;
  const [expectedAt, setExpectedAt] = useState(job.expectedAt);
  const [promisedAt, setPromisedAt] = useState(job.promisedAt);
  const [waitsHere, setWaitsHere] = useState(job.waitsHere);
  const send = async (): Promise<void> => {
    const changed = {
      expectedAt: expectedAt === job.expectedAt ? undefined : isoOf(expectedAt),
      promisedAt: promisedAt === job.promisedAt ? undefined : (isoOf(promisedAt) ?? null),
      waitsHere: waitsHere === job.waitsHere ? undefined : waitsHere,
    };
    const done = { text: 'desk.anotherTimeDone', values: { plate: vehicle.plate } } as const;
    if (await sending.run('changeBooking', { jobId: job.id, version: job.version, ...changed }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('desk.anotherTimeHeading', { plate: vehicle.plate })}
      command="changeBooking"
      act={t('desk.anotherTimeAct')}
      sending={sending}
      ready={expectedAt !== null}
      jobId={job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <DateTimeField label={t('booking.expectedAt')} value={expectedAt} onChange={setExpectedAt} isRequired />
      {expectedAt !== null && <LoadBeside day={calendar.dateOf(expectedAt)} />}
      <DateTimeField label={t('checkIn.promised')} value={promisedAt} onChange={setPromisedAt} />
      <Tick label={t('checkIn.waitsHere')} value={waitsHere} onChange={setWaitsHere} />
    </FormSheet>
  );
};
