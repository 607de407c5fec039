import { fixKinds, otherSystems, tier1Systems, tier2Systems, tierOf, type System } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { FormSheet } from './form-sheet.js';
import { LimitsFields, useLimits } from './limits-fields.js';
import { type Named, NamedSelect } from './line-form.js';
import { optionsOf } from './options.js';
import { said } from './typed.js';

type FixFormProps = {
  readonly jobId: string;
  readonly lines: readonly Named[];
  /** Open follow-ups of the vehicle, one of which may be its permanent repair. */
  readonly followUps?: readonly Named[];
  readonly onClose: () => void;
};

/** What the tier of a system asks before the vehicle leaves, in plain words; never that anything is safe or legal. */
export const TierWords = ({ system }: { readonly system: System }): ReactElement => {
  const { t } = useText();
  const tier = tierOf(system);
  return (
    <div className={tier === 1 ? 'hf-care' : 'hf-quiet'}>
      <p>{tier === 1 ? t('piece.fix.tier1') : tier === 2 ? t('piece.fix.tier2') : t('piece.fix.tier3')}</p>
      <p className="hf-small">{t('piece.fix.defer')}</p>
    </div>
  );
};

/** What stands in for the permanent repair: on which system, until when, and what ends it. */
export const FixForm = ({ jobId, lines, followUps = [], onClose }: FixFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const limits = useLimits();
  const [kind, setKind] = useState<(typeof fixKinds)[number]>('standIn');
  const [standsInFor, setStandsInFor] = useState('');
  const [place, setPlace] = useState('');
  const [heldWith, setHeldWith] = useState('');
  const [system, setSystem] = useState<System | null>(null);
  const [endedByWhat, setEndedByWhat] = useState('');
  const [removedPieceAt, setRemovedPieceAt] = useState('');
  const [lineId, setLineId] = useState<string | null>(null);
  const [followUpId, setFollowUpId] = useState<string | null>(null);
  const filled = [standsInFor, place, endedByWhat].every((text) => said(text) !== undefined);
  const send = async (): Promise<void> => {
    if (system === null) return;
    const what = { kind, standsInFor: standsInFor.trim(), place: place.trim(), heldWith: said(heldWith), system };
    const end = { endedByWhat: endedByWhat.trim(), removedPieceAt: said(removedPieceAt), ...limits.input };
    const about = { lineId: lineId ?? undefined, followUpId: followUpId ?? undefined };
    const input = { temporaryFixId: newId(), jobId, ...about, ...what, ...end };
    const done = { text: 'piece.done.fix', values: { place: what.place } } as const;
    if (await sending.run('addTemporaryFix', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.fix.heading')}
      command="addTemporaryFix"
      act={t('piece.fix.act')}
      sending={sending}
      ready={system !== null && filled}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.fix.kind')}
        value={kind}
        onChange={setKind}
        options={optionsOf(fixKinds, (value) => t(`word.fixKind.${value}`))}
      />
      <Field label={t('piece.fix.standsInFor')} value={standsInFor} onChange={setStandsInFor} isRequired />
      <Field label={t('piece.fix.place')} value={place} onChange={setPlace} isRequired />
      <Field label={t('piece.fix.heldWith')} value={heldWith} onChange={setHeldWith} />
      <Select
        label={t('piece.fix.system')}
        value={system}
        onChange={setSystem}
        options={optionsOf([...tier1Systems, ...tier2Systems, ...otherSystems], (value) => t(`word.system.${value}`))}
        isRequired
      />
      {system !== null && <TierWords system={system} />}
      <Field label={t('piece.fix.endedByWhat')} value={endedByWhat} onChange={setEndedByWhat} isRequired />
      <LimitsFields limits={limits} />
      <Field label={t('piece.fix.removedPieceAt')} value={removedPieceAt} onChange={setRemovedPieceAt} />
      <NamedSelect label={t('piece.fix.line')} rows={lines} value={lineId} onChange={setLineId} />
      <NamedSelect label={t('piece.fix.followUp')} rows={followUps} value={followUpId} onChange={setFollowUpId} />
    </FormSheet>
  );
};
