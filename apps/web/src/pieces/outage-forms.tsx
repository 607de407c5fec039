import type { Board } from '@holdfast/board';
import type { EquipmentItem, Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { openOutages, outOfUseName } from './outages.js';
import { said } from './typed.js';

const theBay = 'theBay';
type Kind = EquipmentItem['kind'];

type OutageFormProps = {
  readonly board: Board;
  readonly bay: Pick<Row<'bay'>, 'id' | 'name'>;
  readonly spec: Pick<Row<'baySpec'>, 'equipment'>;
  readonly onClose: () => void;
};

/** The bay, or a piece of what stands in it, cannot be used: what, and why. A vehicle in it stays where it is. */
export const TakeOutOfUseForm = ({ board, bay, spec, onClose }: OutageFormProps): ReactElement => {
  const text = useText();
  const { t } = text;
  const sending = useSend();
  const isOut = new Set<Kind | null>(openOutages(board, bay.id).map((one) => one.equipment));
  const pieces = spec.equipment.map(({ kind }) => kind).filter((kind) => kind !== 'flat' && !isOut.has(kind));
  const [what, setWhat] = useState<Kind | typeof theBay>(pieces[0] ?? theBay);
  const [words, setWords] = useState('');
  const equipment = what === theBay ? null : what;
  const send = async (): Promise<void> => {
    const piece = equipment === null ? {} : { equipment };
    const input = { outageId: newId(), bayId: bay.id, ...piece, words: words.trim() };
    const values = { what: outOfUseName(equipment, text), bay: bay.name };
    if (await sending.run('takeOutOfUse', input, { text: 'outage.done.out', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('outage.heading', { bay: bay.name })}
      command="takeOutOfUse"
      act={t('outage.act')}
      sending={sending}
      ready={said(words) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('outage.what')}
        size="large"
        value={what}
        onChange={setWhat}
        options={[
          ...pieces.map((kind) => ({ value: kind, label: t(`word.equipment.${kind}`) })),
          { value: theBay, label: t('outage.wholeBay'), isDisabled: isOut.has(null) },
        ]}
      />
      <TextArea label={t('outage.why')} value={words} onChange={setWords} rows={2} isRequired />
      <p className="hf-quiet hf-small">{t('outage.stays')}</p>
    </FormSheet>
  );
};

type PutBackProps = {
  readonly outage: Row<'outage'>;
  readonly bay: Pick<Row<'bay'>, 'name'>;
  readonly onClose: () => void;
};

/** It is used again. */
export const PutBackForm = ({ outage, bay, onClose }: PutBackProps): ReactElement => {
  const text = useText();
  const { t } = text;
  const sending = useSend();
  const [words, setWords] = useState('');
  const values = { what: outOfUseName(outage.equipment, text), bay: bay.name };
  const send = async (): Promise<void> => {
    const input = { outageId: outage.id, version: outage.version, words: said(words) };
    if (await sending.run('putBackInUse', input, { text: 'outage.done.back', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('outage.backHeading', values)}
      command="putBackInUse"
      act={t('outage.backAct')}
      sending={sending}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('outage.was', { words: outage.words })}</p>
      <TextArea label={t('outage.backWords')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
