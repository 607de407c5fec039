import type { Visit } from '@holdfast/board';
import type { goAheadWays, Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { useSend } from '../live/use-send.js';
import type { SaidMore } from '../pieces/contact-entry-form.js';
import { MoneyField } from '../pieces/money-field.js';
import { decimalOf, said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DeskTotal } from './desk-total.js';

const answers = ['given', 'deferred', 'declined'] as const;
const open = 'open';
type Answer = (typeof answers)[number];
type Said = { readonly answer: Answer; readonly upTo: string };
type Answers = Readonly<Record<string, Said>>;

/** The way of a contact as the go-ahead names it; what is written is a message, on paper too. */
const wayOf = (way: 'telephone' | 'message' | 'letter' | 'there'): (typeof goAheadWays)[number] =>
  way === 'letter' ? 'message' : way;

/** The lines as they would stand with these answers. */
const withAnswers = (lines: Visit['lines'], saidOf: Answers): Row<'workLine'>[] =>
  lines.map((line) => {
    const one = saidOf[line.id];
    if (one === undefined) return line;
    const goAheadUpTo = one.answer === 'given' ? (decimalOf(one.upTo) ?? null) : null;
    return { ...line, goAhead: one.answer, goAheadUpTo };
  });

type LineAnswerProps = {
  readonly line: Row<'workLine'>;
  readonly said: Said | undefined;
  readonly onChange: (said: Said | undefined) => void;
};

const LineAnswer = ({ line, said: one, onChange }: LineAnswerProps): ReactElement => {
  const { t, format } = useText();
  return (
    <div className="hf-call-answer">
      <p>
        <span className="hf-entry-title">{line.title}</span>{' '}
        <span className="hf-figures">{line.price === null ? t('desk.noPrice') : format.money(line.price)}</span>
      </p>
      <Choice
        label={t('desk.answerOn', { title: line.title })}
        value={one?.answer ?? open}
        onChange={(answer) => {
          onChange(answer === open ? undefined : { answer, upTo: one?.upTo ?? line.price ?? '' });
        }}
        options={[
          ...answers.map((answer) => ({ value: answer, label: t(`word.goAhead.${answer}`) })),
          { value: open, label: t('desk.answerOpen') },
        ]}
      />
      {one?.answer === 'given' && (
        <MoneyField
          label={t('desk.answerUpTo')}
          hint={t('piece.goAhead.upToHint')}
          value={one.upTo}
          onChange={(upTo) => {
            onChange({ ...one, upTo });
          }}
        />
      )}
    </div>
  );
};

type Props = {
  readonly visit: Visit;
  readonly lines: readonly Row<'workLine'>[];
  readonly standing: readonly Row<'standingGoAhead'>[];
};

/** The answers that were given in one call, line by line, and how they are recorded once the call is in the log. */
export const useCallAnswers = ({ visit, lines, standing }: Props): SaidMore => {
  const { t } = useText();
  const sending = useSend();
  const [saidOf, setSaid] = useState<Answers>({});
  const [recorded, setRecorded] = useState<ReadonlySet<string>>(new Set());
  const left = lines.filter((line) => !recorded.has(line.id));
  return {
    words: lines.some((line) => saidOf[line.id] !== undefined)
      ? lines
          .flatMap((line) => {
            const one = saidOf[line.id];
            return one === undefined
              ? []
              : [t('desk.answerIs', { title: line.title, answer: t(`word.goAhead.${one.answer}`) })];
          })
          .join('; ')
      : null,
    ready: Object.values(saidOf).every((one) => decimalOf(one.upTo) !== null),
    record: async ({ way, withName }) => {
      for (const line of left) {
        const one = saidOf[line.id];
        if (one === undefined) continue;
        const { answer } = one;
        const upTo = answer === 'given' ? (decimalOf(one.upTo) ?? undefined) : undefined;
        const input = { lineId: line.id, version: line.version, answer, byName: said(withName), how: wayOf(way), upTo };
        const done = { text: 'piece.done.goAhead', values: { title: line.title, answer } } as const;
        if (!(await sending.run('recordGoAhead', input, done))) return false;
        setRecorded((before) => new Set(before).add(line.id));
      }
      return true;
    },
    fields:
      left.length === 0 ? null : (
        <fieldset className="hf-group">
          <legend>{t('desk.callAnswers')}</legend>
          {left.map((line) => (
            <LineAnswer
              key={line.id}
              line={line}
              said={saidOf[line.id]}
              onChange={(one) => {
                setSaid(({ [line.id]: _before, ...others }) =>
                  one === undefined ? others : { ...others, [line.id]: one },
                );
              }}
            />
          ))}
          <DeskTotal lines={withAnswers(visit.lines, saidOf)} standing={standing} />
          {sending.problem !== null && <p>{t('desk.callLogged')}</p>}
          <Refusal problem={sending.problem} jobId={visit.job.id} />
        </fieldset>
      ),
  };
};
