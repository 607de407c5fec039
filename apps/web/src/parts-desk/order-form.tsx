import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { DueFields, dueDay, type SupplierState } from '../pieces/due-in-form.js';
import { FormSheet, Opener } from '../pieces/form-sheet.js';
import { SupplierForm } from '../pieces/supplier-form.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf, said } from '../pieces/typed.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import type { PartItem } from './part-rows.js';
import { quantityWords } from './part-words.js';

type Due = { readonly state: SupplierState; readonly dueOn: string };
type Line = Due & { readonly price: string };

const unsaid: Due = { state: 'inStock', dueOn: '' };

/** The one supplier that all chosen lines name; none where they differ. */
const commonSupplier = (items: readonly PartItem[]): string | null => {
  const named = new Set(items.map((item) => item.supplierId));
  return named.size === 1 ? (items[0]?.supplierId ?? null) : null;
};

const wireDue = ({ state, dueOn }: Due): { state: SupplierState; dueOn?: string } => {
  const day = dueDay(state, dueOn);
  return day === undefined ? { state } : { state, dueOn: day };
};

type LineFieldsProps = {
  readonly item: PartItem;
  readonly line: Line;
  /** Each line has a date of its own. */
  readonly ownDue: boolean;
  readonly onChange: (line: Line) => void;
};

const LineFields = ({ item, line, ownDue, onChange }: LineFieldsProps): ReactElement => {
  const text = useText();
  const { t } = text;
  const { currency } = useShopSettings();
  return (
    <fieldset className="hf-group">
      <legend>{item.description}</legend>
      <p className="hf-small hf-quiet">
        {quantityWords(item, text)} · {item.plate}
        {item.lineTitle !== null && ` · ${item.lineTitle}`}
      </p>
      <Field
        label={t('piece.part.price', { currency })}
        value={line.price}
        onChange={(price) => {
          onChange({ ...line, price });
        }}
        wrong={decimalOf(line.price) === null ? t('piece.wrong.amount') : null}
      />
      {ownDue && (
        <DueFields
          state={line.state}
          dueOn={line.dueOn}
          onState={(state) => {
            onChange({ ...line, state });
          }}
          onDueOn={(dueOn) => {
            onChange({ ...line, dueOn });
          }}
        />
      )}
    </fieldset>
  );
};

type OrderFormProps = {
  readonly items: readonly PartItem[];
  readonly onClose: () => void;
  readonly onOrdered: () => void;
};

/** The chosen part lines go to one supplier under one reference. */
export const OrderForm = ({ items, onClose, onOrdered }: OrderFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const suppliers = [...useBoard().tables.supplier.values()].sort((a, b) => a.name.localeCompare(b.name));
  const [supplierId, setSupplierId] = useState<string | null>(() => commonSupplier(items));
  const [reference, setReference] = useState('');
  const [oneDate, setOneDate] = useState(true);
  const [due, setDue] = useState<Due>(unsaid);
  const [typed, setTyped] = useState<Readonly<Record<string, Line>>>({});
  const lineOf = (item: PartItem): Line => typed[item.id] ?? { ...unsaid, price: item.unitPrice ?? '' };
  const prices = items.map((item) => decimalOf(lineOf(item).price));
  const send = async (): Promise<void> => {
    if (supplierId === null) return;
    const lines = items.map((item, at) => ({
      partLineId: item.id,
      version: item.version,
      unitPrice: prices[at] ?? undefined,
      due: wireDue(oneDate ? due : lineOf(item)),
    }));
    const input = { orderId: newId(), supplierId, reference: reference.trim(), lines };
    const values = { count: items.length, reference: input.reference };
    if (!(await sending.run('placeOrder', input, { text: 'partsDesk.done.order', values }))) return;
    onOrdered();
    onClose();
  };
  return (
    <FormSheet
      heading={t('partsDesk.order.heading', { count: items.length })}
      command="placeOrder"
      act={t('partsDesk.order.act')}
      sending={sending}
      ready={
        supplierId !== null &&
        said(reference) !== undefined &&
        items.length > 0 &&
        prices.every((price) => price !== null)
      }
      onSend={() => void send()}
      onClose={onClose}
    >
      <div className="hf-with-act">
        <Select
          label={t('partsDesk.order.supplier')}
          value={supplierId}
          onChange={setSupplierId}
          options={suppliers.map((one) => ({ value: one.id, label: one.name }))}
          isRequired
        />
        <Opener label={t('partsDesk.newSupplier')} command="addSupplier" size="normal">
          {(close) => <SupplierForm onClose={close} onAdded={setSupplierId} />}
        </Opener>
      </div>
      <Field label={t('partsDesk.order.reference')} value={reference} onChange={setReference} isRequired />
      {items.length > 1 && <Tick label={t('partsDesk.order.oneDate')} value={oneDate} onChange={setOneDate} />}
      {oneDate && (
        <DueFields
          {...due}
          onState={(state) => {
            setDue({ ...due, state });
          }}
          onDueOn={(dueOn) => {
            setDue({ ...due, dueOn });
          }}
        />
      )}
      {items.map((item) => (
        <LineFields
          key={item.id}
          item={item}
          line={lineOf(item)}
          ownDue={!oneDate}
          onChange={(line) => {
            setTyped((before) => ({ ...before, [item.id]: line }));
          }}
        />
      ))}
    </FormSheet>
  );
};
