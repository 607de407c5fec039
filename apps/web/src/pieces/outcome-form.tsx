import { concernOutcomes } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { optionsOf } from './options.js';
import { said } from './typed.js';

type OutcomeFormProps = {
  readonly concern: {
    readonly id: string;
    readonly version: number;
    readonly words: string;
    readonly conditions: string | null;
  };
  readonly jobId: string;
  readonly onClose: () => void;
};

/** What became of a concern, under the conditions that had shown it. */
export const OutcomeForm = ({ concern, jobId, onClose }: OutcomeFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [outcome, setOutcome] = useState<(typeof concernOutcomes)[number] | null>(null);
  const [conditions, setConditions] = useState(concern.conditions ?? '');
  const [words, setWords] = useState('');
  // Gone means: under the conditions that had shown it. Not tried needs its why.
  const isWhole =
    outcome !== null &&
    (outcome !== 'gone' || said(conditions) !== undefined) &&
    (outcome !== 'notTried' || said(words) !== undefined);
  const send = async (): Promise<void> => {
    if (outcome === null) return;
    const under = outcome === 'notTried' ? undefined : said(conditions);
    const input = { concernId: concern.id, version: concern.version, outcome, conditions: under, words: said(words) };
    const values = { outcome: t(`word.outcome.${outcome}`) };
    if (await sending.run('recordConcernOutcome', input, { text: 'piece.done.outcome', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.outcome.heading', { words: concern.words })}
      command="recordConcernOutcome"
      act={t('piece.outcome.act')}
      sending={sending}
      ready={isWhole}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.outcome.outcome')}
        size="large"
        value={outcome}
        onChange={setOutcome}
        options={optionsOf(concernOutcomes, (value) => t(`word.outcome.${value}`))}
      />
      {outcome !== 'notTried' && (
        <TextArea
          label={t('piece.outcome.conditions')}
          value={conditions}
          onChange={setConditions}
          rows={2}
          isRequired={outcome === 'gone'}
        />
      )}
      <TextArea
        label={outcome === 'notTried' ? t('piece.outcome.why') : t('piece.words')}
        value={words}
        onChange={setWords}
        rows={2}
        isRequired={outcome === 'notTried'}
      />
    </FormSheet>
  );
};
