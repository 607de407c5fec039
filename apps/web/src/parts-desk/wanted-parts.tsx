import type { ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { Opener } from '../pieces/form-sheet.js';
import { Part } from '../pieces/part.js';
import { Tick } from '../pieces/ticks.js';
import { useText } from '../text/use-text.js';
import { OrderForm } from './order-form.js';
import { PartEntry } from './part-entry.js';
import { CancelAct, CheckInAct, DueInAct, type SectionProps } from './part-sections.js';
import type { PartItem } from './part-rows.js';

type WantedProps = SectionProps & {
  readonly items: readonly PartItem[];
  readonly chosen: readonly string[];
  readonly onChosen: (ids: readonly string[]) => void;
};

/** What nobody has ordered yet: tick what goes to one supplier, then order it at once. */
export const WantedParts = ({ items, chosen, onChosen, now, bins }: WantedProps): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const picked = items.filter((item) => chosen.includes(item.id));
  const choose = (id: string, yes: boolean): void => {
    onChosen(yes ? [...chosen, id] : chosen.filter((one) => one !== id));
  };
  return (
    <Part
      heading={t('partsDesk.wanted')}
      under={may.command('placeOrder') ? t('partsDesk.wantedHow') : undefined}
      acts={
        picked.length > 0 && (
          <Opener
            label={t('partsDesk.orderChosen', { count: picked.length })}
            command="placeOrder"
            size="normal"
            look="ink"
          >
            {(close) => (
              <OrderForm
                items={picked}
                onClose={close}
                onOrdered={() => {
                  onChosen([]);
                }}
              />
            )}
          </Opener>
        )
      }
    >
      <ul className="hf-part-lines">
        {items.map((item) => (
          <PartEntry
            key={item.id}
            item={item}
            now={now}
            {...(may.command('placeOrder')
              ? {
                  title: (
                    <Tick
                      label={item.description}
                      value={chosen.includes(item.id)}
                      onChange={(yes) => {
                        choose(item.id, yes);
                      }}
                    />
                  ),
                }
              : {})}
            acts={
              <>
                <DueInAct item={item} />
                <CheckInAct item={item} bins={bins} />
                <CancelAct item={item} />
              </>
            }
          />
        ))}
      </ul>
    </Part>
  );
};
