import { useState, type ReactElement } from 'react';

import { holdReasons, type HoldReason } from '@holdfast/domain';

import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { Sheet } from '../ui/layers/dialog.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { StitchedLine } from '../ui/marks/stitched-line.js';
import { Plate } from '../ui/plate.js';
import { offerUndo } from '../ui/undo.js';
import { useSampleTime } from './use-sample-time.js';

const ButtonSamples = (): ReactElement => {
  const { t } = useText();
  const [isOpen, setOpen] = useState(false);
  const offer = (): void => {
    offerUndo({ sentence: t('style.undone'), undo: () => undefined });
  };
  return (
    <>
      <div className="hf-acts hf-measure">
        <Button size="act" look="ink" onPress={offer}>
          {t('style.actStart')}
        </Button>
        <Button size="act" onPress={offer} mark={<ReasonGlyph reason="parts" title={null} size={36} />}>
          {t('style.actHold')}
        </Button>
        <Button size="act" onPress={offer} mark={<StitchedLine title={null} length={64} size={16} />}>
          {t('style.actFix')}
        </Button>
        <Button size="act" onPress={offer} follows={t('style.actPlaceFollows')}>
          {t('style.actPlace')}
        </Button>
      </div>
      <div className="hf-row hf-wide-gap">
        <Button look="ink" onPress={offer}>
          {t('style.actInk')}
        </Button>
        <Button onPress={offer}>{t('style.tryUndo')}</Button>
        <Button
          onPress={() => {
            setOpen(true);
          }}
        >
          {t('style.openSheet')}
        </Button>
        <Button isDisabled onPress={offer}>
          {t('style.actOff')}
        </Button>
        <Button size="small" onPress={offer}>
          {t('style.actSmall')}
        </Button>
      </div>
      <Sheet
        isOpen={isOpen}
        onClose={() => {
          setOpen(false);
        }}
        heading={t('style.fieldReason')}
      >
        <FieldSamples />
      </Sheet>
    </>
  );
};

const FieldSamples = (): ReactElement => {
  const { t } = useText();
  const at = useSampleTime();
  const [plate, setPlate] = useState('kv 418 t');
  const [words, setWords] = useState('');
  const [reason, setReason] = useState<HoldReason | null>(null);
  const [promised, setPromised] = useState<number | null>(() => at('16:30'));
  const [leaves, setLeaves] = useState<'road' | 'transporter' | null>('road');
  const options = holdReasons.map((value) => ({ value, label: t(`reason.${value}`) }));
  return (
    <div className="hf-style-fields">
      <Field label={t('style.fieldPlate')} value={plate} onChange={setPlate} code />
      <Select label={t('style.fieldReason')} value={reason} onChange={setReason} options={options} />
      <DateTimeField
        label={t('style.fieldPromise')}
        value={promised}
        onChange={setPromised}
        wrong={t('style.fieldWrong')}
      />
      <TextArea label={t('style.fieldWords')} value={words} onChange={setWords} hint={t('style.fieldWordsHint')} />
      <Choice
        label={t('style.choiceLeaves')}
        value={leaves}
        onChange={setLeaves}
        size="large"
        options={[
          { value: 'road', label: t('style.leavesRoad') },
          { value: 'transporter', label: t('style.leavesTransporter') },
        ]}
      />
    </div>
  );
};

export const ControlSamples = (): ReactElement => (
  <div className="hf-stack">
    <Plate plate="KV 418 T" fixCount={2} size="large" />
    <ButtonSamples />
    <FieldSamples />
  </div>
);
