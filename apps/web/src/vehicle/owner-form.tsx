import type { VehicleView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useNameWords } from '../pieces/customer-name.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { FindRecord } from './find-record.js';

type OwnerFormProps = { readonly view: VehicleView; readonly onClose: () => void };
type Chosen = { readonly id: string; readonly title: string; readonly under: string; readonly isNew?: true };

/** The vehicle has another owner from now on; a customer who is new to the shop is recorded first. */
export const OwnerForm = ({ view: { vehicle, customer }, onClose }: OwnerFormProps): ReactElement => {
  const { t } = useText();
  const nameOf = useNameWords();
  const sending = useSend();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    if (chosen === null) return;
    const { id: customerId, title: name } = chosen;
    if (chosen.isNew === true) {
      if ((await sending.run('addCustomer', { customerId, name })) === null) return;
      setChosen({ id: customerId, title: name, under: '' });
    }
    const input = { vehicleId: vehicle.id, version: vehicle.version, customerId, words: said(words) };
    const done = { text: 'records.done.owner', values: { plate: vehicle.plate, name } } as const;
    if (await sending.run('changeOwner', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('records.owner.heading', { plate: vehicle.plate })}
      command="changeOwner"
      act={t('records.owner.act')}
      sending={sending}
      ready={chosen !== null}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('records.owner.words', { name: customer === null ? 'empty' : nameOf(customer.name) })}</p>
      <FindRecord
        kind="customer"
        label={t('records.owner.new')}
        except={customer?.id ?? null}
        chosen={chosen}
        onChosen={setChosen}
        asNew={{
          words: (name) => t('records.owner.asNew', { name }),
          press: (name) => {
            setChosen({ id: newId(), title: name, under: t('records.owner.isNew'), isNew: true });
          },
        }}
      />
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
