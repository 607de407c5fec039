import type { FindView } from '@holdfast/contract';
import { useDeferredValue, useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import { useRead } from '../live/reads.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { NewVehicle } from './new-vehicle.js';

/** What begins with these letters; nothing below two of them. */
export const useFind = (typed: string): FindView['items'] => {
  const query = useDeferredValue(typed.trim());
  const path = query.length < 2 ? null : `/api/find?q=${encodeURIComponent(query)}`;
  const { data } = useRead<FindView>(path, ['find']);
  return path === null ? [] : (data?.items ?? []);
};

type FindProps = { readonly onChosen: (vehicleId: string) => void };

const Results = ({ items, onChosen }: FindProps & { readonly items: FindView['items'] }): ReactElement => {
  const { t } = useText();
  const here = items.flatMap((item) => (item.kind === 'job' && item.open ? [item] : []));
  const plates = new Set(here.map((item) => item.plate));
  const vehicles = items.flatMap((item) => (item.kind === 'vehicle' && !plates.has(item.plate) ? [item] : []));
  if (here.length + vehicles.length === 0) return <p className="hf-quiet">{t('checkIn.nothingFound')}</p>;
  return (
    <ul className="hf-found" aria-label={t('checkIn.found')}>
      {here.map((item) => (
        <li key={item.id}>
          <span>
            <strong className="hf-code">{item.plate}</strong> {item.description}
          </span>
          <Link href={jobPath(item.id)}>{t('checkIn.hereAlready', { number: item.number })}</Link>
        </li>
      ))}
      {vehicles.map((item) => (
        <li key={item.id}>
          <span>
            <strong className="hf-code">{item.plate}</strong> {item.description}
          </span>
          <Button
            size="small"
            look="ink"
            onPress={() => {
              onChosen(item.id);
            }}
          >
            {t('checkIn.take', { plate: item.plate })}
          </Button>
        </li>
      ))}
    </ul>
  );
};

/** Find the vehicle by plate, name or key; or record one that is new to the shop. */
export const FindVehicle = ({ onChosen }: FindProps): ReactElement => {
  const { t } = useText();
  const [typed, setTyped] = useState('');
  const [isNew, setNew] = useState(false);
  const items = useFind(typed);
  if (isNew) {
    return (
      <NewVehicle
        plate={typed.trim().toUpperCase()}
        onAdded={onChosen}
        onBack={() => {
          setNew(false);
        }}
      />
    );
  }
  return (
    <>
      <Field
        label={t('checkIn.find')}
        hint={t('checkIn.findHint')}
        value={typed}
        onChange={setTyped}
        type="search"
        autoFocus
      />
      {typed.trim().length >= 2 && <Results items={items} onChosen={onChosen} />}
      <div className="hf-row">
        <Button
          onPress={() => {
            setNew(true);
          }}
        >
          {t('checkIn.newVehicle')}
        </Button>
      </div>
    </>
  );
};
