import { calendarOfBoard, rowsOf, type Board } from '@holdfast/board';
import type { SessionView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import './presence.css';
import { useBoardStore } from '../live/board-store.js';
import { Refusal } from '../live/refusal.js';
import { useSession } from '../live/session.js';
import { useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { presenceOf, type Presence } from './presence.js';
import { usePresenceWords } from './presence-words.js';
import { ShopTimeDialog } from './shop-time-dialog.js';
import { useSaying, type Said } from './use-saying.js';

const ways: readonly Said[] = ['present', 'break', 'shopTime', 'gone'];

/** Which of the four holds; null for one of whom nothing was said today. */
const heldBy = ({ kind }: Presence): Said | null => ways.find((way) => way === kind) ?? null;

type MyProps = { readonly board: Board; readonly person: SessionView['person'] };

const MyFour = ({ board, person }: MyProps): ReactElement => {
  const { t } = useText();
  const now = useNow();
  const telling = useSaying(board, person, true);
  const words = usePresenceWords(board, now);
  const [asks, setAsks] = useState(false);
  const presence = presenceOf(rowsOf(board), person.id, now, calendarOfBoard(board));
  const held = heldBy(presence);
  const press = (kind: Said): void => {
    if (kind === 'shopTime') setAsks(true);
    else if (kind !== held) void telling.say({ kind });
  };
  return (
    <>
      <div className="hf-presence" role="group" aria-label={t('presence.mine', { state: words(presence) })}>
        {ways.map((kind) => (
          <Button
            key={kind}
            size="small"
            look="plain"
            command="recordAttendance"
            pressed={kind === held}
            isPending={telling.sending.pending}
            onPress={() => {
              press(kind);
            }}
          >
            {t(`presence.way.${kind}`)}
          </Button>
        ))}
      </div>
      {asks ? (
        <ShopTimeDialog
          board={board}
          personId={person.id}
          telling={telling}
          onClose={() => {
            setAsks(false);
          }}
        />
      ) : (
        telling.sending.problem !== null && (
          <div className="hf-presence-refused">
            <Refusal problem={telling.sending.problem} />
          </div>
        )
      )}
    </>
  );
};

/** Here, break, shop time, gone: of the person who is signed in, in the header of every screen. */
export const MyPresence = (): ReactElement | null => {
  const board = useBoardStore((store) => store.board);
  const { state } = useSession();
  if (board === null || state.kind !== 'signedIn') return null;
  const { person, may } = state.session;
  return may.commands.includes('recordAttendance') ? <MyFour board={board} person={person} /> : null;
};
