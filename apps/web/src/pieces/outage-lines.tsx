import type { Board } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import './flag-lines.css';
import { useText } from '../text/use-text.js';
import { Opener } from './form-sheet.js';
import { PutBackForm } from './outage-forms.js';
import { openOutages, outOfUseName, useOutageWords } from './outages.js';

type OutageLinesProps = { readonly board: Board; readonly bay: Row<'bay'>; readonly now: number };

/** What cannot be used in a bay, since when and why, each with the way back. Nothing while all can. */
export const OutageLines = ({ board, bay, now }: OutageLinesProps): ReactElement | null => {
  const text = useText();
  const { t } = text;
  const words = useOutageWords(now);
  const outages = openOutages(board, bay.id);
  if (outages.length === 0) return null;
  return (
    <ul className="hf-flags" aria-label={t('outage.list', { bay: bay.name })}>
      {outages.map((outage) => (
        <li key={outage.id} id={`outage-${outage.id}`}>
          <span>{words(outage)}</span>
          <Opener
            label={t('outage.back')}
            about={`${bay.name}, ${outOfUseName(outage.equipment, text)}`}
            command="putBackInUse"
            look="plain"
          >
            {(close) => <PutBackForm outage={outage} bay={bay} onClose={close} />}
          </Opener>
        </li>
      ))}
    </ul>
  );
};
