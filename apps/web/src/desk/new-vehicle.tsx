import { drives, massSources, vehicleKinds } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { optionsOf } from '../pieces/options.js';
import { Tick } from '../pieces/ticks.js';
import { said, wholeOf } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';

type Source = (typeof massSources)[number];
type Mass = { readonly kg: string; readonly source: Source };

const MassFields = (props: { label: string; mass: Mass; onChange: (mass: Mass) => void }): ReactElement => {
  const { t } = useText();
  const { label, mass, onChange } = props;
  return (
    <div className="hf-pair">
      <Field
        label={label}
        value={mass.kg}
        onChange={(kg) => {
          onChange({ ...mass, kg });
        }}
        wrong={wholeOf(mass.kg) === null ? t('piece.wrong.whole') : null}
      />
      <Select
        label={`${label}: ${t('checkIn.source')}`}
        value={mass.source}
        onChange={(source) => {
          onChange({ ...mass, source });
        }}
        options={optionsOf(massSources, (value) => t(`word.mass.${value}`))}
      />
    </div>
  );
};

type Masses = { readonly curb: Mass; readonly gross: Mass; readonly weighed: string };

const noMasses: Masses = { curb: { kg: '', source: 'papers' }, gross: { kg: '', source: 'plate' }, weighed: '' };

/** The masses that were typed, each with its source; null when one of them is no number. */
const massesOf = ({ curb, gross, weighed }: Masses) => {
  const [curbKg, grossKg, weighedKg] = [wholeOf(curb.kg), wholeOf(gross.kg), wholeOf(weighed)];
  if (curbKg === null || grossKg === null || weighedKg === null) return null;
  return {
    curbKg,
    curbSource: curbKg === undefined ? undefined : curb.source,
    grossKg,
    grossSource: grossKg === undefined ? undefined : gross.source,
    weighedKg,
  };
};

const MassGroup = (props: { masses: Masses; onChange: (masses: Masses) => void }): ReactElement => {
  const { t } = useText();
  const { masses, onChange } = props;
  return (
    <fieldset className="hf-group">
      <legend>{t('checkIn.masses')}</legend>
      <MassFields
        label={t('checkIn.curb')}
        mass={masses.curb}
        onChange={(curb) => {
          onChange({ ...masses, curb });
        }}
      />
      <MassFields
        label={t('checkIn.gross')}
        mass={masses.gross}
        onChange={(gross) => {
          onChange({ ...masses, gross });
        }}
      />
      <Field
        label={t('checkIn.weighed')}
        value={masses.weighed}
        onChange={(weighed) => {
          onChange({ ...masses, weighed });
        }}
        wrong={wholeOf(masses.weighed) === null ? t('piece.wrong.whole') : null}
      />
    </fieldset>
  );
};

type NewVehicleProps = {
  readonly plate: string;
  readonly onAdded: (vehicleId: string) => void;
  readonly onBack: () => void;
};

/** A vehicle that the shop has not seen before. Masses may stay unknown; a wrong VIN is kept and flagged. */
export const NewVehicle = ({ plate: first, onAdded, onBack }: NewVehicleProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [plate, setPlate] = useState(first);
  const [description, setDescription] = useState('');
  const [kind, setKind] = useState<(typeof vehicleKinds)[number]>('light');
  const [drive, setDrive] = useState<(typeof drives)[number]>('combustion');
  const [vin, setVin] = useState('');
  const [typedMasses, setMasses] = useState(noMasses);
  const [rolls, setRolls] = useState(true);
  const [mayBeDriven, setMayBeDriven] = useState(true);
  const masses = massesOf(typedMasses);
  const ready = said(plate) !== undefined && said(description) !== undefined && masses !== null;
  const send = async (): Promise<void> => {
    const vehicleId = newId();
    const what = {
      plate: plate.trim().toUpperCase(),
      description: description.trim(),
      kind,
      drive,
      vin: said(vin.toUpperCase()),
    };
    const input = { vehicleId, ...what, ...masses, rolls, mayBeDriven };
    const done = { text: 'checkIn.vehicleDone', values: { plate: what.plate } } as const;
    if (await sending.run('addVehicle', input, done)) onAdded(vehicleId);
  };
  return (
    <>
      <h2>{t('checkIn.newVehicle')}</h2>
      <Field label={t('checkIn.plate')} value={plate} onChange={setPlate} code isRequired autoFocus={first === ''} />
      <Field
        label={t('checkIn.description')}
        hint={t('checkIn.descriptionHint')}
        value={description}
        onChange={setDescription}
        isRequired
        autoFocus={first !== ''}
      />
      <Choice
        label={t('checkIn.kind')}
        value={kind}
        onChange={setKind}
        options={optionsOf(vehicleKinds, (value) => t(`word.vehicle.${value}`))}
      />
      <Choice
        label={t('checkIn.drive')}
        value={drive}
        onChange={setDrive}
        options={optionsOf(drives, (value) => t(`word.drive.${value}`))}
      />
      <Field label={t('checkIn.vin')} hint={t('checkIn.vinHint')} value={vin} onChange={setVin} code />
      <MassGroup masses={typedMasses} onChange={setMasses} />
      <div>
        <Tick label={t('checkIn.rolls')} value={rolls} onChange={setRolls} />
        <Tick label={t('checkIn.mayBeDriven')} value={mayBeDriven} onChange={setMayBeDriven} />
      </div>
      <Refusal problem={sending.problem} />
      <div className="hf-step-acts">
        <Button onPress={onBack}>{t('checkIn.back')}</Button>
        <Button
          look="ink"
          command="addVehicle"
          isPending={sending.pending}
          isDisabled={!ready}
          onPress={() => void send()}
        >
          {t('checkIn.addVehicle')}
        </Button>
      </div>
    </>
  );
};
