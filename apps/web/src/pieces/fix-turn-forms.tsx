import { fixEnds, type System, type toldWays } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { TextArea } from '../ui/fields/field.js';
import { TierWords } from './fix-form.js';
import { FormSheet } from './form-sheet.js';
import { type Named, NamedSelect } from './line-form.js';
import { optionsOf } from './options.js';
import { said } from './typed.js';

type FixTurnProps = {
  readonly fix: { readonly id: string; readonly version: number; readonly place: string; readonly system: System };
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** Another person with the skill has looked at a temporary fix: the one who is signed in. */
export const SecondCheckForm = ({ fix, jobId, onClose }: FixTurnProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { secondCheckId: newId(), temporaryFixId: fix.id, version: fix.version, words: said(words) };
    const done = { text: 'piece.done.secondCheck', values: { place: fix.place } } as const;
    if (await sending.run('recordSecondCheck', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.check.heading', { place: fix.place })}
      command="recordSecondCheck"
      act={t('piece.check.act')}
      sending={sending}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('piece.check.under')}</p>
      <TierWords system={fix.system} />
      <TextArea label={t('piece.check.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};

type EndFixProps = FixTurnProps & {
  /** Done lines of this vehicle: one of them may be the permanent repair. */
  readonly doneLines: readonly Named[];
};

const ways = [...fixEnds, 'failed', 'removed'] as const;
type How = (typeof ways)[number];
const toldFor: Readonly<Partial<Record<How, readonly (typeof toldWays)[number][]>>> = {
  mendedElsewhere: ['told', 'seen'],
  ownerRefuses: ['told', 'signed'],
};

/** How a temporary fix ended; or that it failed or was removed, which leaves its follow-up open and urgent. */
export const EndFixForm = ({ fix, jobId, doneLines, onClose }: EndFixProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [how, setHow] = useState<How | null>(null);
  const [told, setTold] = useState<(typeof toldWays)[number] | null>(null);
  const [lineId, setLineId] = useState<string | null>(doneLines.length === 1 ? (doneLines[0]?.id ?? null) : null);
  const [words, setWords] = useState('');
  const learnt = how === null ? undefined : toldFor[how];
  const send = async (): Promise<void> => {
    if (how === null) return;
    const by = {
      toldHow: learnt ? (told ?? undefined) : undefined,
      lineId: how === 'repaired' ? (lineId ?? undefined) : undefined,
    };
    const input = { temporaryFixId: fix.id, version: fix.version, how, ...by, words: said(words) };
    const values = { place: fix.place, how: t(`word.fixEnd.${how}`) };
    if (await sending.run('endTemporaryFix', input, { text: 'piece.done.endFix', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.endFix.heading', { place: fix.place })}
      command="endTemporaryFix"
      act={t('piece.endFix.act')}
      sending={sending}
      ready={how !== null}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.endFix.how')}
        size="large"
        value={how}
        onChange={setHow}
        options={optionsOf(ways, (value) => t(`word.fixEnd.${value}`))}
      />
      {(how === 'failed' || how === 'removed') && <p className="hf-quiet">{t('piece.endFix.staysOpen')}</p>}
      {how === 'repaired' &&
        (doneLines.length === 0 ? (
          <p className="hf-quiet">{t('piece.endFix.noLine')}</p>
        ) : (
          <NamedSelect label={t('piece.endFix.line')} rows={doneLines} value={lineId} onChange={setLineId} />
        ))}
      {learnt && (
        <Choice
          label={t('piece.endFix.told')}
          value={told}
          onChange={setTold}
          options={optionsOf(learnt, (value) => t(`word.told.${value}`))}
        />
      )}
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
