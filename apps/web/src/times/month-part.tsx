import type { TimesView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useRead } from '../live/reads.js';
import { useSend } from '../live/use-send.js';
import { FormSheet, Opener } from '../pieces/form-sheet.js';
import { Part } from '../pieces/part.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';

type FormProps = { readonly month: string; readonly onClose: () => void };

const CloseForm = ({ month, onClose }: FormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    if (await sending.run('closeMonth', { month, words: said(words) }, { text: 'times.month.done' })) onClose();
  };
  return (
    <FormSheet
      heading={t('times.month.close')}
      command="closeMonth"
      act={t('times.month.close')}
      sending={sending}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('times.month.closeMeans')}</p>
      <TextArea label={t('times.month.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};

const ReopenForm = ({ month, onClose }: FormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    if (await sending.run('reopenMonth', { month, words }, { text: 'times.month.reopened' })) onClose();
  };
  return (
    <FormSheet
      heading={t('times.month.reopen')}
      command="reopenMonth"
      act={t('times.month.reopen')}
      sending={sending}
      ready={said(words) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('times.month.reopenMeans')}</p>
      <TextArea label={t('times.why')} value={words} onChange={setWords} rows={2} isRequired />
    </FormSheet>
  );
};

/** Whether the times of a month, `YYYY-MM`, can still be corrected; shown for a month that is over. */
export const MonthPart = ({ month }: { readonly month: string }): ReactElement | null => {
  const { t } = useText();
  const day = `${month}-01`;
  const read = useRead<TimesView>(`/api/times?from=${day}&to=${day}`, ['bay-time']);
  if (!read.data) return null;
  const isClosed = read.data.closedMonths.includes(month);
  return (
    <Part
      heading={t('times.month')}
      acts={
        isClosed ? (
          <Opener label={t('times.month.reopen')} command="reopenMonth">
            {(close) => <ReopenForm month={month} onClose={close} />}
          </Opener>
        ) : (
          <Opener label={t('times.month.close')} command="closeMonth">
            {(close) => <CloseForm month={month} onClose={close} />}
          </Opener>
        )
      }
    >
      <p>{t(isClosed ? 'times.month.closed' : 'times.month.open')}</p>
    </Part>
  );
};
