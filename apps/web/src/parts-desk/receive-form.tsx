import { compare, verdicts } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { NumberField } from '../pieces/number-field.js';
import { optionsOf } from '../pieces/options.js';
import { Tick } from '../pieces/ticks.js';
import { decimalOf, said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { type PartItem, stillToCome } from './part-rows.js';
import { amountWords } from './part-words.js';

type Verdict = (typeof verdicts)[number];
type Checked = {
  readonly came: boolean;
  readonly quantity: string;
  readonly verdict: Verdict;
  /** Its own bin where it differs from the others'. */
  readonly bin: string;
  readonly words: string;
};

type CheckedLineProps = {
  readonly item: PartItem;
  readonly checked: Checked;
  readonly atVehicle: boolean;
  readonly onChange: (checked: Checked) => void;
};

const Differs = ({ item, checked, atVehicle, onChange }: CheckedLineProps): ReactElement => {
  const { t } = useText();
  const put = (part: Partial<Checked>): void => {
    onChange({ ...checked, ...part });
  };
  return (
    <>
      <Choice
        label={t('partsDesk.receive.verdict')}
        value={checked.verdict}
        onChange={(verdict) => {
          put({ verdict });
        }}
        options={optionsOf(verdicts, (value) => t(`word.verdict.${value}`))}
      />
      <NumberField
        label={t('partsDesk.receive.quantity')}
        value={checked.quantity}
        onChange={(quantity) => {
          put({ quantity });
        }}
        unit={item.unit}
        units={[{ value: item.unit, label: item.unit }]}
        places={3}
        wrong={decimalOf(checked.quantity) === null ? t('piece.wrong.amount') : null}
      />
      {!atVehicle && (
        <Field
          label={t('partsDesk.receive.ownBin')}
          value={checked.bin}
          onChange={(bin) => {
            put({ bin });
          }}
        />
      )}
      {checked.verdict !== 'good' && (
        <Field
          label={t('partsDesk.receive.words')}
          value={checked.words}
          onChange={(words) => {
            put({ words });
          }}
        />
      )}
    </>
  );
};

/** One line of what came: all of it and good, unless somebody says that it differs. */
const CheckedLine = (props: CheckedLineProps): ReactElement => {
  const { item, checked, atVehicle, onChange } = props;
  const text = useText();
  const { t } = text;
  const [open, setOpen] = useState(atVehicle);
  const amount = amountWords(decimalOf(checked.quantity) ?? item.quantity, item.unit, text);
  return (
    <div className="hf-checked">
      <div className="hf-checked-line">
        <Tick
          label={t('partsDesk.receive.line', { amount, description: item.description })}
          value={checked.came}
          onChange={(came) => {
            onChange({ ...checked, came });
          }}
        />
        <Button
          size="small"
          pressed={open}
          label={t('partsDesk.receive.differsAbout', { description: item.description })}
          onPress={() => {
            setOpen(!open);
          }}
        >
          {t('partsDesk.receive.differs')}
        </Button>
      </div>
      <p className="hf-quiet hf-small">
        {item.plate}
        {item.number !== null && ` · ${item.number}`}
        {checked.verdict !== 'good' && ` · ${t(`word.verdict.${checked.verdict}`)}`}
      </p>
      {open && checked.came && <Differs {...props} />}
    </div>
  );
};

const shownBins = 6;

type BinProps = { readonly bins: readonly string[]; readonly value: string; readonly onChange: (bin: string) => void };

/** The bin for all of it: one that is in use by one tap, or any other. */
const BinField = ({ bins, value, onChange }: BinProps): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-stack">
      {bins.length > 0 && (
        <Choice
          label={t('partsDesk.receive.bins')}
          size="large"
          value={bins.includes(value) ? value : null}
          onChange={onChange}
          options={bins.slice(0, shownBins).map((bin) => ({ value: bin, label: bin }))}
        />
      )}
      <Field label={t('partsDesk.receive.bin')} value={value} onChange={onChange} />
    </div>
  );
};

type ReceiveFormProps = {
  readonly heading: string;
  readonly items: readonly PartItem[];
  /** Bins in use, to be chosen by one tap. */
  readonly bins: readonly string[];
  readonly orderId?: string | null;
  readonly supplierId?: string | null;
  /** Found damaged or wrong at the vehicle, after it had been taken as good. */
  readonly atVehicle?: boolean;
  readonly onClose: () => void;
};

/** Parts came and are checked: a whole order that is good goes into one bin by one act. */
export const ReceiveForm = (props: ReceiveFormProps): ReactElement => {
  const { items, orderId, supplierId, atVehicle = false, onClose } = props;
  const { t } = useText();
  const sending = useSend();
  const [bin, setBin] = useState('');
  const [note, setNote] = useState('');
  const [typed, setTyped] = useState<Readonly<Record<string, Checked>>>({});
  const checkedOf = (item: PartItem): Checked => {
    const came = stillToCome(item);
    const quantity = atVehicle ? item.here : compare(came, '0') > 0 ? came : item.quantity;
    return typed[item.id] ?? { came: true, quantity, verdict: atVehicle ? 'damaged' : 'good', bin: '', words: '' };
  };
  const came = items.filter((item) => checkedOf(item).came);
  const isReady = came.length > 0 && came.every((item) => typeof decimalOf(checkedOf(item).quantity) === 'string');
  const send = async (): Promise<void> => {
    const checked = came.map((item) => {
      const { quantity, verdict, bin: own, words } = checkedOf(item);
      const where = { bin: said(own) ?? said(bin), foundAtVehicle: atVehicle || undefined };
      return { partLineId: item.id, quantity: decimalOf(quantity) ?? '1', verdict, words: said(words), ...where };
    });
    const from = { orderId: orderId ?? undefined, supplierId: supplierId ?? undefined, note: said(note) };
    const input = { deliveryId: newId(), ...from, items: checked };
    if (await sending.run('receiveParts', input, { text: 'partsDesk.done.receive', values: { count: came.length } }))
      onClose();
  };
  const allGood = came.length === items.length && came.every((item) => checkedOf(item).verdict === 'good');
  return (
    <FormSheet
      heading={props.heading}
      command="receiveParts"
      act={
        atVehicle ? t('partsDesk.receive.found') : t(allGood ? 'partsDesk.receive.allGood' : 'partsDesk.receive.act')
      }
      sending={sending}
      ready={isReady}
      onSend={() => void send()}
      onClose={onClose}
    >
      {!atVehicle && <BinField bins={props.bins} value={bin} onChange={setBin} />}
      <div className="hf-checked-list">
        {items.map((item) => (
          <CheckedLine
            key={item.id}
            item={item}
            checked={checkedOf(item)}
            atVehicle={atVehicle}
            onChange={(checked) => {
              setTyped((before) => ({ ...before, [item.id]: checked }));
            }}
          />
        ))}
      </div>
      {!atVehicle && <Field label={t('partsDesk.receive.note')} value={note} onChange={setNote} />}
    </FormSheet>
  );
};
