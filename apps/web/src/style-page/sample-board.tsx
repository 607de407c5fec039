import type { ReactElement } from 'react';

import type { HoldReason } from '@holdfast/domain';

import { BayRow } from '../strip/bay-row.js';
import { StripBoard } from '../strip/strip-board.js';
import { stripWindow } from '../strip/strip-scale.js';
import { useText } from '../text/use-text.js';
import { useSampleTime } from './use-sample-time.js';

/** Five bays of an invented shop at 12:36, each in another state. */
export const SampleBoard = (): ReactElement => {
  const { t, format } = useText();
  const at = useSampleTime();
  const now = at('12:36');
  const bay = (number: number): string => t('style.sampleBay', { number });
  const held = (reason: HoldReason): string =>
    `${t('strip.heldFor', { reason: t(`reason.${reason}`) })}, ${format.duration(192)}`;
  const fix = { from: at('07:00'), to: null, ended: false };
  return (
    <StripBoard label={t('style.strips')} {...stripWindow(now, 11 * 60)} now={now}>
      <BayRow
        subject={{ name: bay(1), vehicle: 'KV 418 T', fixCount: 1 }}
        cautions={[]}
        state={held('parts')}
        ready={t('style.sampleReady')}
        segments={[
          { from: at('07:10'), to: at('09:24'), kind: 'worked' },
          { from: at('09:24'), to: now, kind: 'held', reason: 'parts', ageTicks: 2, waiting: 'within' },
        ]}
        stitched={[fix]}
        forecast={{ p50: at('15:30'), p80: at('16:10'), p95: at('17:00') }}
        promise={at('16:30')}
      />
      <BayRow
        subject={{ name: bay(2), vehicle: 'RB 27 ELM', fixCount: 0 }}
        cautions={[{ id: 'live', kind: 'highVoltage', words: t('style.sampleLive') }]}
        state={t('style.sampleWorked', { duration: format.duration(70) })}
        segments={[
          { from: at('07:30'), to: at('10:05'), kind: 'worked' },
          { from: at('10:05'), to: at('11:26'), kind: 'held', reason: 'technician' },
          { from: at('11:26'), to: now, kind: 'worked' },
          { from: at('14:40'), to: at('17:30'), kind: 'planned', label: 'MD 903' },
        ]}
        stitched={[{ from: at('07:30'), to: at('11:50'), ended: true }]}
        forecast={{ p50: at('13:40'), p80: at('14:05'), p95: at('14:30') }}
        promise={at('13:15')}
      />
      <BayRow
        subject={{ name: bay(3), vehicle: 'SO 5012', fixCount: 3 }}
        cautions={[{ id: 'oil', kind: 'caution', words: t('style.sampleCaution') }]}
        state={held('goAhead')}
        ready={t('style.sampleNoDate')}
        segments={[
          { from: at('07:00'), to: at('08:20'), kind: 'unknown' },
          { from: at('08:20'), to: at('09:24'), kind: 'worked' },
          { from: at('09:24'), to: now, kind: 'held', reason: 'goAhead', ageTicks: 4, waiting: 'past' },
        ]}
        stitched={[fix]}
      />
      <BayRow
        subject={{ name: bay(4), vehicle: 'LT 66 KOR', fixCount: 0 }}
        cautions={[]}
        state={t('style.sampleStands', { duration: format.duration(156) })}
        segments={[
          { from: at('07:40'), to: at('09:15'), kind: 'worked' },
          { from: at('09:15'), to: at('09:35'), kind: 'break' },
          { from: at('09:35'), to: at('10:00'), kind: 'worked' },
          { from: at('10:00'), to: now, kind: 'noReason', ageTicks: 2 },
        ]}
        stitched={[]}
      />
      <BayRow
        subject={{ name: bay(5) }}
        cautions={[]}
        state={t('style.sampleEmpty')}
        segments={[
          { from: at('07:00'), to: at('08:30'), kind: 'outOfUse' },
          { from: at('08:30'), to: at('10:40'), kind: 'stored' },
          { from: at('10:40'), to: now, kind: 'empty' },
          { from: at('13:30'), to: at('16:00'), kind: 'planned', label: 'VN 72 RIS' },
        ]}
        stitched={[]}
      />
    </StripBoard>
  );
};
