import { goAheadAnswers, goAheadWays, type GoAheadAnswer, type standingKinds } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { MoneyField } from './money-field.js';
import { optionsOf } from './options.js';
import { decimalOf, said } from './typed.js';

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
  /** Standing go-aheads that hold for the visit, with what is left of each; one of them may cover the line. */
  readonly standing?: readonly StandingLeft[];
  readonly onClose: () => void;
};

type Way = (typeof goAheadWays)[number];

/** A standing go-ahead and what is left of its amount on this visit. */
export type StandingLeft = {
  readonly id: string;
  readonly kind: (typeof standingKinds)[number];
  readonly left: string;
};

/** Without a list, and with an empty one, a standing go-ahead is no way to give it. */
const waysWith = (standing: readonly StandingLeft[]): readonly Way[] =>
  standing.length > 0 ? goAheadWays : goAheadWays.filter((way) => way !== 'standing');

/** How the word was given, by whom, or on which standing go-ahead it rests. */
type Word = { readonly how: Way; readonly byName: string; readonly standingId: string | null };

const firstWord = (asked: string | null, standing: readonly StandingLeft[]): Word => {
  const only = standing.length === 1 ? standing[0] : undefined;
  return { how: 'telephone', byName: asked ?? '', standingId: only?.id ?? null };
};

const givenBy = ({ how, byName, standingId }: Word, rests: boolean) =>
  rests
    ? { how, standingGoAheadId: standingId ?? undefined }
    : { how, byName: how === 'shop' ? undefined : said(byName) };

type GivenHowProps = {
  readonly ways: readonly Way[];
  readonly word: Word;
  /** Those to choose from; null while it rests on none. */
  readonly standing: readonly StandingLeft[] | null;
  readonly onChange: (word: Word) => void;
};

const GivenHow = ({ ways, word, standing, onChange }: GivenHowProps): ReactElement => {
  const { t, format } = useText();
  return (
    <>
      <Choice
        label={t('piece.goAhead.how')}
        value={word.how}
        onChange={(how) => {
          onChange({ ...word, how });
        }}
        options={optionsOf(ways, (value) => t(`word.way.${value}`))}
      />
      {standing !== null && (
        <Choice
          label={t('piece.goAhead.standing')}
          value={word.standingId}
          onChange={(standingId) => {
            onChange({ ...word, standingId });
          }}
          options={standing.map((one) => ({
            value: one.id,
            label: t('piece.goAhead.standingLeft', {
              kind: t(`word.standing.${one.kind}`),
              left: format.money(one.left),
            }),
          }))}
        />
      )}
      {standing === null && word.how !== 'shop' && (
        <Field
          label={t('piece.goAhead.byName')}
          value={word.byName}
          onChange={(byName) => {
            onChange({ ...word, byName });
          }}
        />
      )}
    </>
  );
};

/** The customer's word on a line: what, by whom, how, up to what amount. */
export const GoAheadForm = (props: GoAheadFormProps): ReactElement => {
  const { line, jobId, asked, answer: first, standing = [], onClose } = props;
  const { t, format } = useText();
  const sending = useSend();
  const [answer, setAnswer] = useState<GoAheadAnswer>(first ?? 'given');
  const [word, setWord] = useState(() => firstWord(asked, standing));
  const [upTo, setUpTo] = useState(line.price ?? '');
  const [words, setWords] = useState('');
  const given = answer === 'given';
  const rests = given && word.how === 'standing';
  const amount = decimalOf(upTo);
  const send = async (): Promise<void> => {
    const what = { lineId: line.id, version: line.version, answer, words: said(words) };
    const upToOf = given && !rests ? (amount ?? undefined) : undefined;
    const input = answer === 'withCustomer' ? what : { ...what, ...givenBy(word, rests), upTo: upToOf };
    const values = { title: line.title, answer };
    if (await sending.run('recordGoAhead', input, { text: 'piece.done.goAhead', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.goAhead.heading', { title: line.title })}
      command="recordGoAhead"
      act={t('piece.goAhead.act')}
      sending={sending}
      ready={amount !== null && (!rests || word.standingId !== null)}
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
        <GivenHow
          ways={waysWith(given ? standing : [])}
          word={word}
          standing={rests ? standing : null}
          onChange={setWord}
        />
      )}
      {given && !rests && (
        <MoneyField
          label={t('piece.goAhead.upToAmount')}
          value={upTo}
          onChange={setUpTo}
          hint={t('piece.goAhead.upToHint')}
        />
      )}
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
