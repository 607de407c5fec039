import { useState, type ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { MoneyField } from './money-field.js';
import { keptBayOf } from './out-words.js';
import { decimalOf, said } from './typed.js';

export type SubletLike = {
  readonly id: string;
  readonly version: number;
  readonly jobId: string;
  readonly form: 'vehicleOut' | 'componentOut' | 'outsiderIn';
  readonly firm: string;
  readonly component: string | null;
  readonly price: string | null;
};

type BringBackProps = { readonly sublet: SubletLike; readonly plate: string; readonly onClose: () => void };

/** The vehicle or the component is back, or the outsider has gone: where it stands now, and what it costs. */
export const BringBackForm = ({ sublet, plate, onClose }: BringBackProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const keptBay = keptBayOf(useBoard(), sublet.jobId);
  const goesOut = sublet.form === 'vehicleOut';
  const [where, setWhere] = useState<'bay' | 'yard'>(keptBay === null ? 'yard' : 'bay');
  const [yardSpot, setYardSpot] = useState('');
  const [price, setPrice] = useState(sublet.price ?? '');
  const [words, setWords] = useState('');
  const amount = decimalOf(price);
  const what = { firm: sublet.firm, plate, component: sublet.component ?? '' };
  const send = async (): Promise<void> => {
    const stands = !goesOut
      ? {}
      : where === 'bay' && keptBay !== null
        ? { intoKeptSpot: true }
        : { yardSpot: said(yardSpot) };
    const told = { price: amount ?? undefined, words: said(words) };
    const input = { subletId: sublet.id, version: sublet.version, ...stands, ...told };
    const done = { text: 'piece.done.bringBack', values: { form: sublet.form, ...what } } as const;
    if (await sending.run('bringBack', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.bringBack.heading', { form: sublet.form, ...what })}
      command="bringBack"
      act={t('piece.bringBack.act', { form: sublet.form })}
      sending={sending}
      ready={amount !== null}
      jobId={sublet.jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      {goesOut && keptBay !== null && (
        <Choice
          label={t('piece.bringBack.where')}
          value={where}
          onChange={setWhere}
          options={[
            { value: 'bay', label: t('piece.bringBack.bay', { bay: keptBay }) },
            { value: 'yard', label: t('piece.bringBack.yard') },
          ]}
        />
      )}
      {goesOut && (where === 'yard' || keptBay === null) && (
        <Field label={t('piece.bringBack.spot')} value={yardSpot} onChange={setYardSpot} code />
      )}
      <MoneyField label={t('piece.bringBack.price')} value={price} onChange={setPrice} />
      <TextArea label={t('piece.bringBack.words')} value={words} onChange={setWords} rows={2} />
      <p className="hf-quiet hf-small">{t('piece.bringBack.lineStays')}</p>
    </FormSheet>
  );
};
