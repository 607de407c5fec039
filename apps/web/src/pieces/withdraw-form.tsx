import type { goAheadWays } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { optionsOf } from './options.js';
import { said } from './typed.js';

type WithdrawFormProps = {
  readonly line: {
    readonly id: string;
    readonly version: number;
    readonly title: string;
    readonly startedAt: string | number | null;
  };
  readonly jobId: string;
  readonly asked: string | null;
  readonly onClose: () => void;
};

type Way = (typeof goAheadWays)[number];
const ways: readonly Way[] = ['there', 'telephone', 'message'];

/** The customer takes the go-ahead back. On a started line it is put back then, and what was done is charged. */
export const WithdrawForm = ({ line, jobId, asked, onClose }: WithdrawFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [byName, setByName] = useState(asked ?? '');
  const [how, setHow] = useState<Way>('telephone');
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { lineId: line.id, version: line.version, byName: byName.trim(), how, words: said(words) };
    const done = { text: 'piece.done.withdraw', values: { title: line.title } } as const;
    if (await sending.run('withdrawGoAhead', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.withdraw.heading', { title: line.title })}
      command="withdrawGoAhead"
      act={t('piece.withdraw.act')}
      sending={sending}
      ready={said(byName) !== undefined}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-quiet">{t(line.startedAt === null ? 'piece.withdraw.notStarted' : 'piece.withdraw.started')}</p>
      <Field label={t('piece.goAhead.byName')} value={byName} onChange={setByName} isRequired />
      <Choice
        label={t('piece.goAhead.how')}
        value={how}
        onChange={setHow}
        options={optionsOf(ways, (value) => t(`word.way.${value}`))}
      />
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
