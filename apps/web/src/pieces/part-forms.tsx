import { neededTimes } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { FormSheet } from './form-sheet.js';
import type { Named } from './line-form.js';
import { NumberField } from './number-field.js';
import { optionsOf } from './options.js';
import { decimalOf, said } from './typed.js';

type WantPartProps = {
  readonly lines: readonly Named[];
  readonly followUps?: readonly Named[];
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** One part wanted for a line or a follow-up. */
export const WantPartForm = ({ lines, followUps = [], jobId, onClose }: WantPartProps): ReactElement => {
  const { t } = useText();
  const { currency } = useShopSettings();
  const sending = useSend();
  const purposes = [...lines, ...followUps];
  const [purpose, setPurpose] = useState<string | null>(purposes.length === 1 ? (purposes[0]?.id ?? null) : null);
  const [description, setDescription] = useState('');
  const [number, setNumber] = useState('');
  const [quantity, setQuantity] = useState('1');
  const [unit, setUnit] = useState('');
  const [price, setPrice] = useState('');
  const [needed, setNeeded] = useState<(typeof neededTimes)[number]>('beforeRefit');
  const pieces = decimalOf(quantity);
  const unitPrice = decimalOf(price);
  const send = async (): Promise<void> => {
    const forLine = lines.some((line) => line.id === purpose);
    const aim = forLine ? { lineId: purpose ?? undefined } : { followUpId: purpose ?? undefined };
    const what = { description: description.trim(), number: said(number), quantity: pieces ?? '1', unit: said(unit) };
    const input = { partLineId: newId(), ...aim, ...what, unitPrice: unitPrice ?? undefined, needed };
    const done = { text: 'piece.done.wantPart', values: { description: what.description } } as const;
    if (await sending.run('wantPart', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.part.heading')}
      command="wantPart"
      act={t('piece.part.act')}
      sending={sending}
      ready={purpose !== null && said(description) !== undefined && typeof pieces === 'string' && unitPrice !== null}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Select
        label={t('piece.part.for')}
        value={purpose}
        onChange={setPurpose}
        options={purposes.map((one) => ({ value: one.id, label: one.title }))}
      />
      <Field label={t('piece.part.description')} value={description} onChange={setDescription} isRequired />
      <Field label={t('piece.part.number')} value={number} onChange={setNumber} code />
      <div className="hf-pair">
        <NumberField
          label={t('piece.part.quantity')}
          value={quantity}
          onChange={setQuantity}
          unit={unit}
          units={[{ value: unit, label: unit }]}
          places={3}
          wrong={pieces === null ? t('piece.wrong.amount') : null}
        />
        <Field label={t('piece.part.unit')} hint={t('piece.part.unitHint')} value={unit} onChange={setUnit} />
      </div>
      <Choice
        label={t('piece.part.needed')}
        value={needed}
        onChange={setNeeded}
        options={optionsOf(neededTimes, (value) => t(`word.needed.${value}`))}
      />
      <Field
        label={t('piece.part.price', { currency })}
        value={price}
        onChange={setPrice}
        wrong={unitPrice === null ? t('piece.wrong.amount') : null}
      />
    </FormSheet>
  );
};

type PartProps = {
  readonly part: {
    readonly id: string;
    readonly version: number;
    readonly description: string;
    readonly here: string;
    readonly unit: string;
    readonly bin: string | null;
  };
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** Pieces of a part line are on the vehicle: all that are here, unless said otherwise. */
export const FitPartForm = ({ part, jobId, onClose }: PartProps): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const [quantity, setQuantity] = useState(part.here);
  const pieces = decimalOf(quantity);
  const send = async (): Promise<void> => {
    const input = { partLineId: part.id, version: part.version, quantity: pieces ?? undefined };
    const done = { text: 'piece.done.fitPart', values: { description: part.description } } as const;
    if (await sending.run('fitPart', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.fitPart.heading', { description: part.description })}
      command="fitPart"
      act={t('piece.fitPart.act')}
      sending={sending}
      ready={typeof pieces === 'string'}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>
        {t('piece.fitPart.here', { here: format.decimal(part.here), unit: part.unit })}{' '}
        {part.bin !== null && t('piece.fitPart.bin', { bin: part.bin })}
      </p>
      <NumberField
        label={t('piece.fitPart.quantity')}
        value={quantity}
        onChange={setQuantity}
        unit={part.unit}
        units={[{ value: part.unit, label: part.unit }]}
        places={3}
        wrong={pieces === null ? t('piece.wrong.amount') : null}
      />
    </FormSheet>
  );
};

/** A part is no longer wanted, with words. */
export const CancelPartForm = ({ part, jobId, onClose }: PartProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { partLineId: part.id, version: part.version, words: words.trim() };
    const done = { text: 'piece.done.cancelPart', values: { description: part.description } } as const;
    if (await sending.run('cancelPart', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.cancelPart.heading', { description: part.description })}
      command="cancelPart"
      act={t('piece.cancelPart.act')}
      sending={sending}
      ready={said(words) !== undefined}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <TextArea label={t('piece.cancelPart.words')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};
