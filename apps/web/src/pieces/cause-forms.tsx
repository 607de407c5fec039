import { certainties } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { type Sending, useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import type { Named } from './line-form.js';
import { optionsOf } from './options.js';
import { Ticks } from './ticks.js';
import { said } from './typed.js';

type Certainty = (typeof certainties)[number];
type CauseFacts = {
  readonly words: string;
  readonly certainty: Certainty | null;
  readonly concernIds: readonly string[];
};

type SheetProps = {
  readonly command: 'recordCause' | 'changeCause';
  readonly first: CauseFacts;
  readonly jobId: string;
  readonly concerns: readonly Named[];
  readonly sending: Sending;
  readonly onSend: (cause: { words: string; certainty: Certainty; concernIds: string[] }) => void;
  readonly onClose: () => void;
};

const CauseSheet = (props: SheetProps): ReactElement => {
  const { command, first, concerns } = props;
  const { t } = useText();
  const [cause, setCause] = useState(first);
  const { words, certainty, concernIds } = cause;
  const change = (part: Partial<CauseFacts>): void => {
    setCause((before) => ({ ...before, ...part }));
  };
  return (
    <FormSheet
      heading={t(`piece.cause.${command}`)}
      command={command}
      act={t('piece.cause.act')}
      sending={props.sending}
      ready={said(words) !== undefined && certainty !== null && concernIds.length > 0}
      jobId={props.jobId}
      onSend={() => {
        if (certainty !== null) props.onSend({ words: words.trim(), certainty, concernIds: [...concernIds] });
      }}
      onClose={props.onClose}
    >
      <Choice
        label={t('piece.cause.certainty')}
        value={certainty}
        onChange={(value) => {
          change({ certainty: value });
        }}
        options={optionsOf(certainties, (value) => t(`word.certainty.${value}`))}
      />
      <TextArea
        label={certainty === 'notFound' ? t('piece.cause.looked') : t('piece.cause.words')}
        value={words}
        onChange={(value) => {
          change({ words: value });
        }}
        isRequired
      />
      <Ticks
        label={t('piece.cause.concerns')}
        hint={t('piece.cause.several')}
        rows={concerns}
        value={concernIds}
        onChange={(ids) => {
          change({ concernIds: ids });
        }}
      />
    </FormSheet>
  );
};

type CauseFormProps = {
  readonly jobId: string;
  readonly concerns: readonly Named[];
  readonly concernId?: string;
  readonly onClose: () => void;
};

/** What brings one or several concerns about, and how sure that is. */
export const CauseForm = ({ jobId, concerns, concernId, onClose }: CauseFormProps): ReactElement => {
  const sending = useSend();
  const only = concerns.length === 1 ? concerns[0]?.id : undefined;
  const named = concernId ?? only;
  const send = async (cause: { words: string; certainty: Certainty; concernIds: string[] }): Promise<void> => {
    const input = { causeId: newId(), jobId, ...cause };
    if (await sending.run('recordCause', input, { text: 'piece.done.cause' })) onClose();
  };
  return (
    <CauseSheet
      command="recordCause"
      first={{ words: '', certainty: null, concernIds: named === undefined ? [] : [named] }}
      jobId={jobId}
      concerns={concerns}
      sending={sending}
      onSend={(cause) => void send(cause)}
      onClose={onClose}
    />
  );
};

type ChangeCauseProps = {
  readonly cause: CauseFacts & { readonly id: string; readonly version: number };
  readonly jobId: string;
  readonly concerns: readonly Named[];
  readonly onClose: () => void;
};

/** A cause said anew: it turned out to be likely only, or to explain another concern as well. */
export const ChangeCauseForm = ({ cause, jobId, concerns, onClose }: ChangeCauseProps): ReactElement => {
  const sending = useSend();
  const send = async (facts: { words: string; certainty: Certainty; concernIds: string[] }): Promise<void> => {
    const input = { causeId: cause.id, version: cause.version, ...facts };
    if (await sending.run('changeCause', input, { text: 'piece.done.changeCause' })) onClose();
  };
  return (
    <CauseSheet
      command="changeCause"
      first={cause}
      jobId={jobId}
      concerns={concerns}
      sending={sending}
      onSend={(facts) => void send(facts)}
      onClose={onClose}
    />
  );
};
