import type { ReactElement } from 'react';

import { DueInForm } from '../pieces/due-in-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { CancelPartForm } from '../pieces/part-forms.js';
import { Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { PartEntry } from './part-entry.js';
import { type OpenOrder, type PartItem, wholeOrder } from './part-rows.js';
import { ReceiveForm } from './receive-form.js';

export type SectionProps = {
  /** Epoch ms. */
  readonly now: number;
  /** Every open part line that was read. */
  readonly all: readonly PartItem[];
  readonly bins: readonly string[];
};

type ActProps = { readonly item: PartItem };

export const DueInAct = ({ item }: ActProps): ReactElement => {
  const { t } = useText();
  return (
    <Opener label={t('partsDesk.act.dueIn')} command="recordDueIn" about={item.description}>
      {(close) => (
        <DueInForm
          parts={[{ id: item.id, title: item.description }]}
          {...(item.dueState === null ? {} : { state: item.dueState })}
          onClose={close}
        />
      )}
    </Opener>
  );
};

export const CancelAct = ({ item }: ActProps): ReactElement => {
  const { t } = useText();
  return (
    <Opener label={t('partsDesk.act.cancel')} command="cancelPart" about={item.description} look="plain">
      {(close) => (
        <CancelPartForm part={item} {...(item.jobId === null ? {} : { jobId: item.jobId })} onClose={close} />
      )}
    </Opener>
  );
};

export const CheckInAct = ({ item, bins }: ActProps & Pick<SectionProps, 'bins'>): ReactElement => {
  const { t } = useText();
  return (
    <Opener label={t('partsDesk.act.checkIn')} command="receiveParts" about={item.description}>
      {(close) => (
        <ReceiveForm
          heading={t('partsDesk.receive.headingOne', { description: item.description })}
          items={[item]}
          bins={bins}
          orderId={item.orderId}
          supplierId={item.supplierId}
          onClose={close}
        />
      )}
    </Opener>
  );
};

type OnOrderProps = ActProps & Pick<SectionProps, 'bins'> & { readonly isAlone: boolean };

/** An order of one part line is checked in as a whole order. */
const OnOrderActs = ({ item, bins, isAlone }: OnOrderProps): ReactElement => (
  <>
    <DueInAct item={item} />
    {!isAlone && <CheckInAct item={item} bins={bins} />}
    <CancelAct item={item} />
  </>
);

const OrderGroup = ({ order, now, all, bins }: SectionProps & { readonly order: OpenOrder }): ReactElement => {
  const { t } = useText();
  const supplier = order.supplierName ?? t('partsDesk.noSupplier');
  const title = order.reference === null ? supplier : t('partsDesk.orderOf', { supplier, reference: order.reference });
  const coming = wholeOrder(order, all);
  const named = coming.map((item) => ({ id: item.id, title: item.description }));
  return (
    <section className="hf-part-order" aria-label={title}>
      <div className="hf-part-order-head">
        <h3>{title}</h3>
        <div className="hf-entry-acts">
          <Opener label={t('partsDesk.act.checkInOrder')} command="receiveParts" look="ink" about={title}>
            {(close) => (
              <ReceiveForm
                heading={t('partsDesk.receive.heading', { order: title })}
                items={coming}
                bins={bins}
                orderId={order.orderId}
                supplierId={order.supplierId}
                onClose={close}
              />
            )}
          </Opener>
          {coming.length > 1 && (
            <Opener label={t('partsDesk.act.dueInOrder')} command="recordDueIn" about={title}>
              {(close) => <DueInForm parts={named} onClose={close} />}
            </Opener>
          )}
        </div>
      </div>
      <ul className="hf-part-lines">
        {order.items.map((item) => (
          <PartEntry
            key={item.id}
            item={item}
            now={now}
            acts={<OnOrderActs item={item} bins={bins} isAlone={coming.length === 1} />}
          />
        ))}
      </ul>
    </section>
  );
};

type OrdersProps = SectionProps & {
  readonly orders: readonly OpenOrder[];
  readonly heading: string;
  readonly under?: string;
};

/** On order, by supplier and reference: a whole order is checked in by one act. */
export const OrderedParts = ({ orders, heading, under, ...shared }: OrdersProps): ReactElement | null => {
  if (orders.length === 0) return null;
  return (
    <Part heading={heading} {...(under === undefined ? {} : { under })}>
      {orders.map((order) => (
        <OrderGroup key={order.key} order={order} {...shared} />
      ))}
    </Part>
  );
};

/** Here and not yet on the vehicle; what turns out damaged or wrong at the vehicle is said here. */
export const ArrivedParts = ({
  items,
  now,
  bins,
}: SectionProps & { readonly items: readonly PartItem[] }): ReactElement | null => {
  const { t } = useText();
  if (items.length === 0) return null;
  return (
    <Part heading={t('partsDesk.arrived')} under={t('partsDesk.arrivedWhy')}>
      <ul className="hf-part-lines">
        {items.map((item) => (
          <PartEntry
            key={item.id}
            item={item}
            now={now}
            acts={
              <>
                <Opener label={t('partsDesk.act.found')} command="receiveParts" about={item.description}>
                  {(close) => (
                    <ReceiveForm
                      heading={t('partsDesk.receive.headingFound', { description: item.description })}
                      items={[item]}
                      bins={bins}
                      atVehicle
                      onClose={close}
                    />
                  )}
                </Opener>
                <CancelAct item={item} />
              </>
            }
          />
        ))}
      </ul>
    </Part>
  );
};
