import { useState, type ReactElement } from 'react';

import { useFind } from '../pieces/use-find.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';

type Found = { readonly id: string; readonly title: string; readonly under: string };

type FindRecordProps = {
  readonly kind: 'vehicle' | 'customer';
  readonly label: string;
  /** The record at hand, which is not offered. */
  readonly except: string | null;
  readonly chosen: Found | null;
  readonly onChosen: (found: Found | null) => void;
  /** Offered for what was typed and is none of those that were found. */
  readonly asNew?: { readonly words: (name: string) => string; readonly press: (name: string) => void };
};

/** Looks for another vehicle or customer of the shop, one of which is chosen. */
export const FindRecord = (props: FindRecordProps): ReactElement => {
  const { t } = useText();
  const { kind, chosen, onChosen, asNew } = props;
  const [typed, setTyped] = useState('');
  const items = useFind(chosen === null ? typed : '');
  const found = items.flatMap((item): Found[] => {
    if (item.kind !== kind || item.id === props.except) return [];
    return item.kind === 'vehicle'
      ? [{ id: item.id, title: item.plate, under: item.description }]
      : [
          {
            id: item.id,
            title: item.name,
            under: item.fleet === null ? '' : t('vehicle.inFleet', { fleet: item.fleet }),
          },
        ];
  });
  if (chosen !== null) {
    return (
      <div className="hf-record-chosen">
        <p>
          <span className="hf-hint">{props.label}</span>
          <strong className={kind === 'vehicle' ? 'hf-code' : undefined}>{chosen.title}</strong> {chosen.under}
        </p>
        <Button
          size="small"
          onPress={() => {
            onChosen(null);
          }}
        >
          {t('records.another')}
        </Button>
      </div>
    );
  }
  const name = typed.trim();
  return (
    <>
      <Field label={props.label} hint={t(`records.findHint.${kind}`)} value={typed} onChange={setTyped} type="search" />
      {name.length >= 2 && (
        <ul className="hf-records" aria-label={t('records.found')}>
          {found.map((one) => (
            <li key={one.id}>
              <span>
                <strong className={kind === 'vehicle' ? 'hf-code' : undefined}>{one.title}</strong> {one.under}
              </span>
              <Button
                size="small"
                label={t('records.takeAbout', { name: one.title })}
                onPress={() => {
                  onChosen(one);
                }}
              >
                {t('records.take')}
              </Button>
            </li>
          ))}
          {found.length === 0 && <li className="hf-quiet">{t('records.nothing')}</li>}
          {asNew !== undefined && (
            <li>
              <span>{asNew.words(name)}</span>
              <Button
                size="small"
                label={t('records.takeAbout', { name: asNew.words(name) })}
                onPress={() => {
                  asNew.press(name);
                }}
              >
                {t('records.take')}
              </Button>
            </li>
          )}
        </ul>
      )}
    </>
  );
};
