import type { ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { SupplierForm } from '../pieces/supplier-form.js';
import { useWeekWords } from '../pieces/week-hours.js';
import { useText } from '../text/use-text.js';

/** Who parts are ordered from. */
export const SuppliersPart = ({ id }: { readonly id: string }): ReactElement => {
  const { t } = useText();
  const { tables } = useBoard();
  const weekWords = useWeekWords();
  const suppliers = [...tables.supplier.values()].sort((a, b) => a.name.localeCompare(b.name));
  return (
    <Part
      id={id}
      heading={t('shop.suppliers')}
      acts={
        <Opener label={t('shop.supplier.add')} command="addSupplier">
          {(close) => <SupplierForm onClose={close} />}
        </Opener>
      }
    >
      {suppliers.length === 0 && <p className="hf-quiet">{t('shop.supplier.none')}</p>}
      <Entries>
        {suppliers.map((supplier) => (
          <Entry
            key={supplier.id}
            id={`supplier-${supplier.id}`}
            acts={
              <Opener label={t('shop.change')} command="changeSupplier" about={supplier.name}>
                {(close) => <SupplierForm supplier={supplier} onClose={close} />}
              </Opener>
            }
          >
            <p>
              <span className="hf-entry-title">{supplier.name}</span>{' '}
              {[supplier.phone, supplier.mail].filter((reach) => reach !== null).join(', ')}
            </p>
            <p className="hf-quiet hf-small">
              {[
                supplier.cutOff === null ? null : t('shop.supplier.cutOff', { time: supplier.cutOff }),
                supplier.runs === null ? null : t('shop.supplier.runs', { hours: weekWords(supplier.runs) }),
              ]
                .filter((phrase) => phrase !== null)
                .join(' · ')}
            </p>
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};
