import { calendarOfBoard } from '@holdfast/board';
import { lifts, type Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import './placing.css';
import { remember, remembered } from '../live/remembered.js';
import { useSignedIn } from '../live/session.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { CautionMark } from '../ui/marks/caution-mark.js';

/** Whether something there lifts a vehicle, by points or by its wheels. */
export const liftsVehicles = (equipment: Row<'baySpec'>['equipment']): boolean => lifts({ equipment }).length > 0;

const keyOf = (personId: string): string => `holdfast.lift-words.${personId}`;

export type LiftReminder = {
  /** What decides besides the rated capacity has not been told to this person today. */
  readonly isDue: boolean;
  /** It was in sight while a vehicle was placed on a lift. */
  readonly wasTold: () => void;
};

/** Rule 4: told once per person and day, to whoever places a vehicle on a lift. */
export const useLiftReminder = (): LiftReminder => {
  const { person } = useSignedIn();
  const today = calendarOfBoard(useBoard()).dateOf(useNow(60_000));
  const [told, setTold] = useState<string | null>(() => remembered(keyOf(person.id)));
  return {
    isDue: told !== today,
    wasTold: () => {
      remember(keyOf(person.id), today);
      setTold(today);
    },
  };
};

/** What decides besides the rated capacity, beside the places to choose from. */
export const LiftWords = ({ reminder }: { readonly reminder: LiftReminder }): ReactElement | null => {
  const { t } = useText();
  if (!reminder.isDue) return null;
  return (
    <p className="hf-care hf-lift-words">
      <CautionMark kind="caution" title={null} size={28} />
      <span>{t('placing.lift')}</span>
    </p>
  );
};
