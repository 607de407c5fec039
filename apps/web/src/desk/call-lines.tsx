import type { Board, Visit } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { Opener } from '../pieces/form-sheet.js';
import { GoAheadForm } from '../pieces/go-ahead-form.js';
import { WithdrawForm } from '../pieces/withdraw-form.js';
import { useText } from '../text/use-text.js';
import { askedLines, givenLines, standingLeft, standingOfVisit } from './asked-lines.js';
import { DeskTotal } from './desk-total.js';

type LinesProps = {
  readonly board: Board;
  readonly visit: Visit;
  /** Whose word is asked. */
  readonly name: string | null;
  readonly now: number;
};

const AskedLine = ({
  board,
  visit,
  name,
  now,
  line,
}: LinesProps & { readonly line: Row<'workLine'> }): ReactElement => {
  const { t, format } = useText();
  return (
    <li>
      <span className="hf-desk-line">
        {line.title}
        <span className="hf-small hf-quiet">
          {' '}
          {t('desk.askedSince', { since: format.moment(line.effectiveAt, now) })}
        </span>
      </span>
      <span className="hf-desk-amount">{line.price === null ? t('desk.noPrice') : format.money(line.price)}</span>
      <Opener command="recordGoAhead" label={t('desk.word')} about={line.title}>
        {(close) => (
          <GoAheadForm
            line={line}
            jobId={visit.job.id}
            asked={name}
            standing={standingLeft(board, visit, line, now)}
            onClose={close}
          />
        )}
      </Opener>
    </li>
  );
};

const GivenLine = ({
  visit,
  name,
  line,
}: Pick<LinesProps, 'visit' | 'name'> & { line: Row<'workLine'> }): ReactElement => {
  const { t, format } = useText();
  return (
    <li>
      <span className="hf-desk-line">{line.title}</span>
      <span className="hf-desk-amount">{line.price === null ? t('desk.noPrice') : format.money(line.price)}</span>
      <Opener command="withdrawGoAhead" label={t('desk.takeBack')} look="plain" about={line.title}>
        {(close) => <WithdrawForm line={line} jobId={visit.job.id} asked={name} onClose={close} />}
      </Opener>
    </li>
  );
};

/** The lines that wait for a word, what the visit comes to, and the lines whose go-ahead could be taken back. */
export const CallLines = (props: LinesProps): ReactElement => {
  const { board, visit, name, now } = props;
  const { t } = useText();
  const given = givenLines(visit);
  return (
    <>
      <ul className="hf-desk-lines">
        {askedLines(board, visit).map((line) => (
          <AskedLine key={line.id} {...props} line={line} />
        ))}
      </ul>
      <DeskTotal lines={visit.lines} standing={standingOfVisit(board, visit, now)} />
      {given.length > 0 && (
        <details className="hf-desk-more">
          <summary>{t('desk.givenLines', { count: given.length })}</summary>
          <ul className="hf-desk-lines">
            {given.map((line) => (
              <GivenLine key={line.id} visit={visit} name={name} line={line} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
};
