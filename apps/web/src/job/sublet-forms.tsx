import type { JobView } from '@holdfast/contract';
import { subletForms } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { NamedSelect } from '../pieces/line-form.js';
import { MoneyField } from '../pieces/money-field.js';
import { MovedHow, useMovedHow } from '../pieces/moved-how.js';
import { optionsOf } from '../pieces/options.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf, isoOf, said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { type JobSublet, openLines } from './job-parties.js';

type Form = (typeof subletForms)[number];
type Facts = {
  readonly firm: string;
  readonly supplierId: string | null;
  readonly component: string;
  /** Epoch ms. */
  readonly slotAt: number | null;
  readonly dueBackAt: number | null;
  readonly price: string;
  readonly words: string;
};

const noFacts: Facts = {
  firm: '',
  supplierId: null,
  component: '',
  slotAt: null,
  dueBackAt: null,
  price: '',
  words: '',
};
const atOf = (iso: string | null): number | null => (iso === null ? null : Date.parse(iso));

/** Facts as the wire wants them; what was not said is left out. */
const told = (facts: Facts) => ({
  firm: facts.firm.trim(),
  supplierId: facts.supplierId ?? undefined,
  component: said(facts.component),
  slotAt: isoOf(facts.slotAt),
  dueBackAt: isoOf(facts.dueBackAt),
  price: decimalOf(facts.price) ?? undefined,
  words: said(facts.words),
});

const isWhole = (form: Form, facts: Facts): boolean =>
  said(facts.firm) !== undefined &&
  decimalOf(facts.price) !== null &&
  (form !== 'componentOut' || said(facts.component) !== undefined);

type FieldsProps = { readonly form: Form; readonly facts: Facts; readonly onChange: (facts: Facts) => void };

const SubletFields = ({ form, facts, onChange }: FieldsProps): ReactElement => {
  const { t } = useText();
  const suppliers = [...useBoard().tables.supplier.values()];
  const set =
    <K extends keyof Facts>(key: K) =>
    (value: Facts[K]): void => {
      onChange({ ...facts, [key]: value });
    };
  const pick = (supplierId: string | null): void => {
    const name = suppliers.find((one) => one.id === supplierId)?.name;
    onChange({ ...facts, supplierId, firm: name ?? facts.firm });
  };
  return (
    <>
      <NamedSelect
        label={t('sublet.supplier')}
        rows={suppliers.map((one) => ({ id: one.id, title: one.name }))}
        value={facts.supplierId}
        onChange={pick}
      />
      <Field label={t('sublet.firm')} value={facts.firm} onChange={set('firm')} isRequired />
      {form === 'componentOut' && (
        <Field label={t('sublet.component')} value={facts.component} onChange={set('component')} isRequired />
      )}
      <DateTimeField label={t(`sublet.slot.${form}`)} value={facts.slotAt} onChange={set('slotAt')} />
      <DateTimeField
        label={t(form === 'outsiderIn' ? 'sublet.doneBy' : 'sublet.dueBack')}
        value={facts.dueBackAt}
        onChange={set('dueBackAt')}
      />
      <MoneyField label={t('sublet.price')} value={facts.price} onChange={set('price')} />
      <TextArea label={t('sublet.words')} value={facts.words} onChange={set('words')} rows={2} />
    </>
  );
};

type ArrangeProps = { readonly view: JobView; readonly onClose: () => void };

/** Work by another firm: the vehicle goes out, a component goes out, or somebody comes in. */
export const ArrangeSubletForm = ({ view, onClose }: ArrangeProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [form, setForm] = useState<Form>('vehicleOut');
  const [lineId, setLineId] = useState<string | null>(null);
  const [facts, setFacts] = useState(noFacts);
  const send = async (): Promise<void> => {
    const of = { subletId: newId(), jobId: view.job.id, lineId: lineId ?? undefined, form };
    const done = { text: 'sublet.done.arrange', values: { firm: facts.firm.trim() } } as const;
    if (await sending.run('arrangeSublet', { ...of, ...told(facts) }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('sublet.arrange.heading')}
      command="arrangeSublet"
      act={t('sublet.arrange.act')}
      sending={sending}
      ready={isWhole(form, facts)}
      jobId={view.job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('sublet.form')}
        value={form}
        onChange={setForm}
        options={optionsOf(subletForms, (value) => t(`word.subletForm.${value}`))}
      />
      <NamedSelect label={t('sublet.line')} rows={openLines(view)} value={lineId} onChange={setLineId} />
      <SubletFields form={form} facts={facts} onChange={setFacts} />
    </FormSheet>
  );
};

type SubletProps = { readonly sublet: JobSublet; readonly onClose: () => void };

/** Firm, slot, price or day of return said anew. */
export const ChangeSubletForm = ({ sublet, onClose }: SubletProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [facts, setFacts] = useState<Facts>({
    firm: sublet.firm,
    supplierId: sublet.supplierId,
    component: sublet.component ?? '',
    slotAt: atOf(sublet.slotAt),
    dueBackAt: atOf(sublet.dueBackAt),
    price: sublet.price ?? '',
    words: sublet.words ?? '',
  });
  const send = async (): Promise<void> => {
    const input = { subletId: sublet.id, version: sublet.version, ...told(facts) };
    if (await sending.run('changeSublet', input, { text: 'sublet.done.change', values: { firm: facts.firm } }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('sublet.change.heading', { firm: sublet.firm })}
      command="changeSublet"
      act={t('sublet.change.act')}
      sending={sending}
      ready={isWhole(sublet.form, facts)}
      jobId={sublet.jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <SubletFields form={sublet.form} facts={facts} onChange={setFacts} />
    </FormSheet>
  );
};

/** An arranged sublet does not take place. */
export const CancelSubletForm = ({ sublet, onClose }: SubletProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { subletId: sublet.id, version: sublet.version, words: words.trim() };
    if (await sending.run('cancelSublet', input, { text: 'sublet.done.cancel', values: { firm: sublet.firm } }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('sublet.cancel.heading', { firm: sublet.firm })}
      command="cancelSublet"
      act={t('sublet.cancel.act')}
      sending={sending}
      ready={said(words) !== undefined}
      jobId={sublet.jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <TextArea label={t('sublet.cancel.words')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};

type SendAwayProps = SubletProps & { readonly view: JobView };

/** The vehicle goes to another firm: whether its spot stays its own, and how it gets there where it does not roll. */
export const SendAwayForm = ({ view, sublet, onClose }: SendAwayProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const moved = useMovedHow();
  const [keepSpot, setKeepSpot] = useState(false);
  const [alreadyOut, setAlreadyOut] = useState(false);
  const inBay = view.places.some((place) => place.kind === 'bay' && place.toAt === null);
  const send = async (): Promise<void> => {
    const of = { subletId: sublet.id, version: sublet.version, placeId: newId() };
    const how = { keepSpot: inBay && keepSpot, alreadyOut: alreadyOut || undefined, ...moved.moving };
    const done = { text: 'sublet.done.away', values: { plate: view.vehicle.plate, firm: sublet.firm } } as const;
    if (await sending.run('sendAway', { ...of, ...how }, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('sublet.away.heading', { plate: view.vehicle.plate, firm: sublet.firm })}
      command="sendAway"
      act={t('sublet.away.act')}
      sending={sending}
      jobId={sublet.jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      {inBay && <Tick label={t('sublet.away.keepSpot')} value={keepSpot} onChange={setKeepSpot} />}
      {!view.vehicle.mayBeDriven && <p>{t(view.vehicle.rolls ? 'sublet.away.notDriven' : 'sublet.away.notRolls')}</p>}
      {!view.vehicle.mayBeDriven && <MovedHow state={moved} />}
      <Tick label={t('sublet.away.already')} value={alreadyOut} onChange={setAlreadyOut} />
    </FormSheet>
  );
};
