import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Dated } from './part.js';
import { StrikeOpener } from './strike-form.js';

type ContactLogProps = { readonly entries: VehicleView['contactEntries'] };

/** Calls, messages, letters: when, with whom, the answer, the next try, whose move. Newest first. */
export const ContactLog = ({ entries }: ContactLogProps): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const inOrder = [...entries].sort((a, b) => b.effectiveAt.localeCompare(a.effectiveAt));
  return (
    <Dated
      lines={inOrder.map((entry) => ({
        when: format.moment(Date.parse(entry.effectiveAt), now),
        what: t('piece.contactLog.entry', {
          way: t(`word.contactWay.${entry.way}`),
          name: entry.withName ?? 'empty',
          reached: entry.reached ? 'yes' : 'no',
          answer: entry.answer ?? 'empty',
          next: entry.nextTryAt === null ? 'empty' : format.moment(Date.parse(entry.nextTryAt), now),
          move: t(`word.moveOf.${entry.moveOf}`),
          by: people.get(entry.byId ?? '')?.name ?? 'empty',
        }),
        act: (
          <StrikeOpener
            entry={{ table: 'contactEntry', id: entry.id, version: entry.version }}
            about={format.moment(Date.parse(entry.effectiveAt), now)}
          />
        ),
      }))}
    />
  );
};
