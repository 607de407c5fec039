import type { ReactElement } from 'react';

import { decimalOf, minutesOf } from '../pieces/typed.js';
import { useShopSettings } from '../text/shop-settings.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { newLine, type Draft, type DraftLine } from './draft.js';

type StepProps = { readonly draft: Draft; readonly onChange: (part: Partial<Draft>) => void };

/** What is to be done, with book hours and price as far as known. */
export const StepLines = ({ draft, onChange }: StepProps): ReactElement => {
  const { t } = useText();
  const { currency } = useShopSettings();
  const { lines } = draft;
  const change = (id: string, part: Partial<DraftLine>): void => {
    onChange({ lines: lines.map((one) => (one.id === id ? { ...one, ...part } : one)) });
  };
  return (
    <section className="hf-stack" aria-label={t('booking.lines')}>
      <div>
        <h2>{t('booking.lines')}</h2>
        <p className="hf-small hf-quiet">{t('booking.linesHint')}</p>
      </div>
      {lines.map((line, at) => (
        <fieldset key={line.id} className="hf-group">
          <legend>{t('booking.line', { number: at + 1 })}</legend>
          <Field
            label={t('booking.title')}
            value={line.title}
            onChange={(title) => {
              change(line.id, { title });
            }}
          />
          <div className="hf-pair">
            <Field
              label={t('booking.book')}
              hint={t('piece.hoursHint')}
              value={line.book}
              onChange={(book) => {
                change(line.id, { book });
              }}
              wrong={minutesOf(line.book) === null ? t('piece.wrong.minutes') : null}
            />
            <Field
              label={t('booking.price', { currency })}
              hint={t('booking.priceHint')}
              value={line.price}
              onChange={(price) => {
                change(line.id, { price });
              }}
              wrong={decimalOf(line.price) === null ? t('piece.wrong.amount') : null}
            />
          </div>
          {lines.length > 1 && (
            <div className="hf-row">
              <Button
                size="small"
                look="plain"
                onPress={() => {
                  onChange({ lines: lines.filter((one) => one.id !== line.id) });
                }}
              >
                {t('booking.dropLine', { number: at + 1 })}
              </Button>
            </div>
          )}
        </fieldset>
      ))}
      <div className="hf-row">
        <Button
          onPress={() => {
            onChange({ lines: [...lines, newLine()] });
          }}
        >
          {t('booking.addLine')}
        </Button>
      </div>
    </section>
  );
};
