import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { said } from './typed.js';
import { emptyWeek, isWhole, WeekHours } from './week-hours.js';

type SupplierFormProps = { readonly onClose: () => void; readonly onAdded?: (supplierId: string) => void };

/** A supplier with its order cut-off and the hours in which its vans come. */
export const SupplierForm = ({ onClose, onAdded }: SupplierFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [name, setName] = useState('');
  const [phone, setPhone] = useState('');
  const [mail, setMail] = useState('');
  const [cutOff, setCutOff] = useState('');
  const [runs, setRuns] = useState(emptyWeek);
  const hasRuns = Object.values(runs).some((day) => day.length > 0);
  const isTime = /^([01]\d|2[0-3]):[0-5]\d$/.test(cutOff);
  const send = async (): Promise<void> => {
    const supplierId = newId();
    const reach = { phone: said(phone), mail: said(mail), cutOff: said(cutOff) };
    const input = { supplierId, name: name.trim(), ...reach, runs: hasRuns ? runs : undefined };
    if (await sending.run('addSupplier', input, { text: 'supplier.done', values: { name: input.name } })) {
      onAdded?.(supplierId);
      onClose();
    }
  };
  return (
    <FormSheet
      heading={t('supplier.heading')}
      command="addSupplier"
      act={t('supplier.act')}
      sending={sending}
      ready={said(name) !== undefined && (cutOff === '' || isTime) && isWhole(runs)}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field label={t('supplier.name')} value={name} onChange={setName} isRequired />
      <Field label={t('supplier.phone')} value={phone} onChange={setPhone} type="tel" />
      <Field label={t('supplier.mail')} value={mail} onChange={setMail} type="email" />
      <Field
        label={t('supplier.cutOff')}
        hint={t('supplier.cutOffHint')}
        value={cutOff}
        onChange={setCutOff}
        wrong={cutOff === '' || isTime ? null : t('supplier.cutOffWrong')}
      />
      <fieldset className="hf-group">
        <legend>{t('supplier.runs')}</legend>
        <WeekHours hours={runs} onHours={setRuns} caption={t('supplier.runs')} hoursHeading={t('supplier.between')} />
      </fieldset>
    </FormSheet>
  );
};
