import { openVisits } from '@holdfast/board';
import type { OutstandingPage } from '@holdfast/contract';
import { lineEnded } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { useRead } from '../live/reads.js';
import { useBoard } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { WantPartForm } from '../pieces/part-forms.js';
import { useText } from '../text/use-text.js';

const Form = ({ onClose }: { readonly onClose: () => void }): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const outstanding = useRead<OutstandingPage>('/api/outstanding?limit=200', ['outstanding']);
  const lines = openVisits(board, shopNow()).flatMap((visit) =>
    visit.lines
      .filter((line) => !lineEnded(line))
      .map((line) => ({
        id: line.id,
        title: t('partsDesk.want.line', { plate: visit.vehicle.plate, title: line.title }),
      })),
  );
  const followUps = (outstanding.data?.items ?? []).flatMap((item) =>
    item.kind === 'followUp'
      ? [{ id: item.row.id, title: t('partsDesk.want.followUp', { plate: item.vehicle.plate, title: item.row.title }) }]
      : [],
  );
  return <WantPartForm lines={lines} followUps={followUps} onClose={onClose} />;
};

/** A part wanted from the desk: for a line of a vehicle that is here, or for a follow-up of one that has left. */
export const WantPart = (): ReactElement => {
  const { t } = useText();
  return (
    <Opener label={t('partsDesk.want')} command="wantPart" size="normal">
      {(close) => <Form onClose={close} />}
    </Opener>
  );
};
