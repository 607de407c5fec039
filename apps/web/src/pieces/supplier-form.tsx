import type { Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { said } from './typed.js';
import { emptyWeek, isWhole, WeekHours } from './week-hours.js';

type SupplierFormProps = {
  /** Left out: a new one. */
  readonly supplier?: Row<'supplier'>;
  readonly onClose: () => void;
  readonly onAdded?: (supplierId: string) => void;
};

/** What stands in the fields at first. */
const firstOf = (supplier: SupplierFormProps['supplier']) => ({
  name: supplier?.name ?? '',
  phone: supplier?.phone ?? '',
  mail: supplier?.mail ?? '',
  cutOff: supplier?.cutOff ?? '',
  runs: supplier?.runs ?? emptyWeek,
});

/** A supplier with its order cut-off and the hours in which its vans come. */
export const SupplierForm = ({ supplier, onClose, onAdded }: SupplierFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const first = firstOf(supplier);
  const [name, setName] = useState(first.name);
  const [phone, setPhone] = useState(first.phone);
  const [mail, setMail] = useState(first.mail);
  const [cutOff, setCutOff] = useState(first.cutOff);
  const [runs, setRuns] = useState(first.runs);
  const hasRuns = Object.values(runs).some((day) => day.length > 0);
  const isTime = /^([01]\d|2[0-3]):[0-5]\d$/.test(cutOff);
  const add = async (): Promise<void> => {
    const supplierId = newId();
    const reach = { phone: said(phone), mail: said(mail), cutOff: said(cutOff) };
    const input = { supplierId, name: name.trim(), ...reach, runs: hasRuns ? runs : undefined };
    if (await sending.run('addSupplier', input, { text: 'supplier.done', values: { name: input.name } })) {
      onAdded?.(supplierId);
      onClose();
    }
  };
  const change = async ({ id, version }: Row<'supplier'>): Promise<void> => {
    const reach = { phone: said(phone) ?? null, mail: said(mail) ?? null, cutOff: said(cutOff) ?? null };
    const input = { supplierId: id, version, name: name.trim(), ...reach, runs: hasRuns ? runs : null };
    if (await sending.run('changeSupplier', input, { text: 'supplier.changed', values: { name: input.name } }))
      onClose();
  };
  return (
    <FormSheet
      heading={supplier ? t('supplier.changeHeading', { name: supplier.name }) : t('supplier.heading')}
      command={supplier ? 'changeSupplier' : 'addSupplier'}
      act={t(supplier ? 'supplier.changeAct' : 'supplier.act')}
      sending={sending}
      ready={said(name) !== undefined && (cutOff === '' || isTime) && isWhole(runs)}
      onSend={() => void (supplier ? change(supplier) : add())}
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
