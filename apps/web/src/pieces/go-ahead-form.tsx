import { goAheadAnswers, goAheadWays, type GoAheadAnswer } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { NumberField } from './number-field.js';
import { optionsOf } from './options.js';
import { decimalOf, said } from './typed.js';
import { useShopSettings } from '../text/shop-settings.js';

type GoAheadFormProps = {
  readonly line: {
    readonly id: string;
    readonly version: number;
    readonly title: string;
    readonly price: string | null;
  };
  readonly jobId: string;
  /** Whose word is asked: offered as who gave it. */
  readonly asked: string | null;
  readonly answer?: GoAheadAnswer;
  readonly onClose: () => void;
};

type Way = (typeof goAheadWays)[number];

/** The customer's word on a line: what, by whom, how, up to what amount. */
export const GoAheadForm = ({ line, jobId, asked, answer: first, onClose }: GoAheadFormProps): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const { currency } = useShopSettings();
  const [answer, setAnswer] = useState<GoAheadAnswer>(first ?? 'given');
  const [byName, setByName] = useState(asked ?? '');
  const [how, setHow] = useState<Way>('telephone');
  const [upTo, setUpTo] = useState(line.price ?? '');
  const [words, setWords] = useState('');
  const given = answer === 'given';
  const amount = decimalOf(upTo);
  const send = async (): Promise<void> => {
    const { id: lineId, version } = line;
    const what = { lineId, version, answer, words: said(words) };
    const by = { byName: how === 'shop' ? undefined : said(byName), how };
    const input =
      answer === 'withCustomer' ? what : { ...what, ...by, upTo: given ? (amount ?? undefined) : undefined };
    const values = { title: line.title, answer };
    if (await sending.run('recordGoAhead', input, { text: 'piece.done.goAhead', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.goAhead.heading', { title: line.title })}
      command="recordGoAhead"
      act={t('piece.goAhead.act')}
      sending={sending}
      ready={amount !== null}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-quiet">
        {line.price === null
          ? t('piece.goAhead.noPrice')
          : t('piece.goAhead.price', { price: format.money(line.price) })}
      </p>
      <Choice
        label={t('piece.goAhead.answer')}
        value={answer}
        onChange={setAnswer}
        options={optionsOf(goAheadAnswers, (value) => t(`word.goAhead.${value}`))}
      />
      {answer !== 'withCustomer' && (
        <>
          <Choice
            label={t('piece.goAhead.how')}
            value={how}
            onChange={setHow}
            options={optionsOf(goAheadWays, (value) => t(`word.way.${value}`))}
          />
          {how !== 'shop' && <Field label={t('piece.goAhead.byName')} value={byName} onChange={setByName} />}
        </>
      )}
      {given && (
        <NumberField
          label={t('piece.goAhead.upTo', { currency })}
          value={upTo}
          onChange={setUpTo}
          unit={currency}
          units={[{ value: currency, label: currency }]}
          places={2}
          hint={t('piece.goAhead.upToHint')}
          wrong={amount === null ? t('piece.wrong.amount') : null}
        />
      )}
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
