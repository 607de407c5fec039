import type { FindView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import { useBoard, useNow } from '../live/use-board.js';
import { useFind } from '../pieces/use-find.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { NewVehicle } from './new-vehicle.js';
import { useCustomer } from './use-customer.js';

/** What the vehicle is looked for: a visit that is booked may be of one that is here, a check-in may not. */
type Way = 'checkIn' | 'book';
type FindProps = { readonly way: Way; readonly onChosen: (vehicleId: string) => void };

type Item<K extends FindView['items'][number]['kind']> = Extract<FindView['items'][number], { kind: K }>;

const Take = ({ id, plate, onChosen }: { id: string; plate: string } & Pick<FindProps, 'onChosen'>): ReactElement => {
  const { t } = useText();
  return (
    <Button
      size="small"
      look="ink"
      onPress={() => {
        onChosen(id);
      }}
    >
      {t('checkIn.take', { plate })}
    </Button>
  );
};

const Named = ({ plate, words }: { readonly plate: string; readonly words: string }): ReactElement => (
  <span>
    <strong className="hf-code">{plate}</strong> {words}
  </span>
);

/** A visit that goes on or is booked: it is taken where it can begin, else it leads to its page. */
const FoundVisit = ({ item, way, onChosen }: FindProps & { readonly item: Item<'job'> }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow(60_000);
  const job = board.tables.job.get(item.id);
  const isPending = job?.checkedInAt === null;
  const state =
    job?.arrivedAt === null
      ? t('checkIn.expectedAt', { at: format.moment(job.expectedAt ?? now, now) })
      : t(isPending ? 'checkIn.standsHere' : 'checkIn.hereAlready', { number: item.number });
  return (
    <li>
      <Named plate={item.plate} words={item.description} />
      {job !== undefined && (isPending || way === 'book') ? (
        <span className="hf-row">
          <span className="hf-quiet hf-small">{state}</span>
          <Take id={job.vehicleId} plate={item.plate} onChosen={onChosen} />
        </span>
      ) : (
        <Link href={jobPath(item.id)}>{t('checkIn.hereAlready', { number: item.number })}</Link>
      )}
    </li>
  );
};

/** The vehicles of a customer that was found by name. */
const VehiclesOf = ({
  item,
  hidden,
  onChosen,
}: Pick<FindProps, 'onChosen'> & {
  readonly item: Item<'customer'>;
  readonly hidden: ReadonlySet<string>;
}): ReactElement => {
  const { t } = useText();
  const vehicles = useCustomer(item.id)?.vehicles;
  const shown = vehicles?.filter((vehicle) => !hidden.has(vehicle.plate)) ?? [];
  return (
    <>
      {vehicles?.length === 0 && <li className="hf-quiet">{t('checkIn.noVehiclesOf', { name: item.name })}</li>}
      {shown.length > 0 && (
        <li className="hf-found-of">
          <span className="hf-small hf-quiet">{t('checkIn.vehiclesOf', { name: item.name })}</span>
          <ul className="hf-found">
            {shown.map((vehicle) => (
              <li key={vehicle.id}>
                <Named plate={vehicle.plate} words={vehicle.description} />
                <Take id={vehicle.id} plate={vehicle.plate} onChosen={onChosen} />
              </li>
            ))}
          </ul>
        </li>
      )}
    </>
  );
};

const mostCustomers = 4;

const Results = ({ items, way, onChosen }: FindProps & { readonly items: FindView['items'] }): ReactElement => {
  const { t } = useText();
  const here = items.flatMap((item) => (item.kind === 'job' && item.open ? [item] : []));
  const plates = new Set(here.map((item) => item.plate));
  const vehicles = items.flatMap((item) => (item.kind === 'vehicle' && !plates.has(item.plate) ? [item] : []));
  const customers = items.flatMap((item) => (item.kind === 'customer' ? [item] : [])).slice(0, mostCustomers);
  if (here.length + vehicles.length + customers.length === 0) {
    return <p className="hf-quiet">{t('checkIn.nothingFound')}</p>;
  }
  const hidden = new Set([...plates, ...vehicles.map((item) => item.plate)]);
  return (
    <ul className="hf-found" aria-label={t('checkIn.found')}>
      {here.map((item) => (
        <FoundVisit key={item.id} item={item} way={way} onChosen={onChosen} />
      ))}
      {vehicles.map((item) => (
        <li key={item.id}>
          <Named plate={item.plate} words={item.description} />
          <Take id={item.id} plate={item.plate} onChosen={onChosen} />
        </li>
      ))}
      {customers.map((item) => (
        <VehiclesOf key={item.id} item={item} hidden={hidden} onChosen={onChosen} />
      ))}
    </ul>
  );
};

/** Find the vehicle by plate, name or key; or record one that is new to the shop. */
export const FindVehicle = ({ way, onChosen }: FindProps): ReactElement => {
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
      {typed.trim().length >= 2 && <Results items={items} way={way} onChosen={onChosen} />}
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
