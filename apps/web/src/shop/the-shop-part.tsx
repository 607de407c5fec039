import { calendarOfBoard, rowsOf, shopOf } from '@holdfast/board';
import { type Row, zoneAt } from '@holdfast/domain';
import { addDays } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet, Opener } from '../pieces/form-sheet.js';
import { optionsOf } from '../pieces/options.js';
import { Dated, Part } from '../pieces/part.js';
import { said } from '../pieces/typed.js';
import { zoneChoices } from '../set-up/places-and-money.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';

type FormProps = { readonly shop: Row<'shop'>; readonly onClose: () => void };

const units = ['metric', 'us'] as const;
const locales = ['en-GB', 'en-US'] as const;

/** Name, units and language of the shop, from now on. */
const ShopForm = ({ shop, onClose }: FormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [name, setName] = useState(shop.name);
  const [unit, setUnit] = useState(shop.units);
  const [locale, setLocale] = useState(shop.locale);
  const send = async (): Promise<void> => {
    const facts = { name: name.trim(), units: unit, locale };
    const input = { shopId: shop.id, version: shop.version, ...facts };
    if (await sending.run('changeShop', input, { text: 'shop.done.shop', values: { name: facts.name } })) onClose();
  };
  return (
    <FormSheet
      heading={t('shop.theShop.heading')}
      command="changeShop"
      act={t('shop.save')}
      sending={sending}
      ready={said(name) !== undefined}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field
        label={t('shop.theShop.name')}
        hint={t('shop.theShop.nameHint')}
        value={name}
        onChange={setName}
        isRequired
      />
      <Choice
        label={t('shop.theShop.units')}
        value={unit}
        onChange={setUnit}
        options={optionsOf(units, (one) => t(`shop.theShop.unit.${one}`))}
      />
      <Choice
        label={t('shop.theShop.locale')}
        value={locale}
        onChange={setLocale}
        options={optionsOf(locales, (one) => t(`locale.${one}`))}
      />
    </FormSheet>
  );
};

/** Another time zone from a day on; what was recorded before keeps its instants. */
const ZoneForm = ({ shop, zone: now, onClose }: FormProps & { readonly zone: string }): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const today = calendarOfBoard(useBoard()).dateOf(shopNow());
  const [validFrom, setValidFrom] = useState(() => addDays(today, 1));
  const [zone, setZone] = useState(now);
  const send = async (): Promise<void> => {
    const input = { shopId: shop.id, version: shop.version, zone: { validFrom, zone } };
    const values = { zone: zone.replaceAll('_', ' '), day: format.day(validFrom) };
    if (await sending.run('changeShop', input, { text: 'shop.done.zone', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('shop.zone.heading')}
      command="changeShop"
      act={t('shop.zone.act')}
      sending={sending}
      ready={validFrom >= today}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p>{t('shop.zone.words')}</p>
      <DateField
        label={t('shop.validFrom')}
        value={validFrom}
        onChange={setValidFrom}
        wrong={validFrom !== '' && validFrom < today ? t('shop.notBeforeToday') : null}
        isRequired
      />
      <Select label={t('setUp.zone')} value={zone} onChange={setZone} options={zoneChoices()} isRequired />
    </FormSheet>
  );
};

/** The shop itself: its name, units, language, currency, and the zone of its days and hours. */
export const TheShopPart = ({ id }: { readonly id: string }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow(60_000);
  const rows = rowsOf(board);
  const shop = shopOf(board);
  const zone = zoneAt(rows, now);
  const zones = rows.list('shopZone').sort((a, b) => (a.validFrom < b.validFrom ? 1 : -1));
  const facts: readonly (readonly [string, string])[] = [
    [t('shop.theShop.name'), shop.name],
    [t('shop.theShop.units'), t(`shop.theShop.unit.${shop.units}`)],
    [t('shop.theShop.locale'), t(`locale.${shop.locale}`)],
    [t('shop.theShop.currency'), shop.currency],
    [t('setUp.zone'), zone.replaceAll('_', ' ')],
  ];
  return (
    <Part
      id={id}
      heading={t('shop.theShop')}
      acts={
        <>
          <Opener label={t('shop.change')} command="changeShop" about={shop.name}>
            {(close) => <ShopForm shop={shop} onClose={close} />}
          </Opener>
          <Opener label={t('shop.zone.open')} command="changeShop">
            {(close) => <ZoneForm shop={shop} zone={zone} onClose={close} />}
          </Opener>
        </>
      }
    >
      <dl className="hf-shop-facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {zones.length > 0 && <h3>{t('shop.zone.fromWhen')}</h3>}
      <Dated lines={zones.map((one) => ({ when: format.day(one.validFrom), what: one.zone.replaceAll('_', ' ') }))} />
    </Part>
  );
};
