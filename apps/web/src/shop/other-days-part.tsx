import { calendarOfBoard, rowsOf } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { useMay } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { ExceptionForm } from './exception-form.js';
import { useExceptionWords } from './exception-words.js';

/** The usual hours hold on that day after all. */
const EndAct = ({ exception }: { readonly exception: Row<'hoursException'> }): ReactElement | null => {
  const { t, format } = useText();
  const may = useMay();
  const sending = useSend();
  if (!may.command('endException')) return null;
  const day = format.day(exception.day);
  const end = (): void => {
    const input = { exceptionId: exception.id, version: exception.version };
    void sending.run('endException', input, { text: 'shop.done.exceptionEnded', values: { day } });
  };
  return (
    <>
      <Button
        size="small"
        look="plain"
        command="endException"
        label={t('shop.exception.endAbout', { day })}
        isPending={sending.pending}
        onPress={end}
      >
        {t('shop.exception.end')}
      </Button>
      <Refusal problem={sending.problem} />
    </>
  );
};

/** Days that are coming on which the shop, or somebody, has other hours than usual. */
export const OtherDaysPart = ({ id }: { readonly id: string }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const words = useExceptionWords();
  const today = calendarOfBoard(board).dateOf(useNow(60_000));
  const coming = rowsOf(board)
    .list('hoursException', (one) => one.day >= today)
    .sort((a, b) => a.day.localeCompare(b.day) || Number(a.personId !== null) - Number(b.personId !== null));
  return (
    <Part
      id={id}
      heading={t('shop.exceptions')}
      under={t('shop.exceptionsUnder')}
      acts={
        <Opener label={t('shop.exception.add')} command="setException">
          {(close) => <ExceptionForm personId={null} onClose={close} />}
        </Opener>
      }
    >
      {coming.length === 0 && <p className="hf-quiet">{t('shop.exception.none')}</p>}
      <Entries>
        {coming.map((one) => (
          <Entry key={one.id} id={`hoursException-${one.id}`} acts={<EndAct exception={one} />}>
            <p>
              <span className="hf-entry-title">{format.day(one.day)}</span>{' '}
              {one.personId === null
                ? t('shop.exception.theShop')
                : (board.tables.person.get(one.personId)?.name ?? t('out.somebody'))}
            </p>
            <p>{words(one)}</p>
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};
