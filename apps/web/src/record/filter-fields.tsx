import { commandNames, isTextKey, type FindView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { call } from '../live/http.js';
import { useBoard } from '../live/use-board.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import type { Filter } from './filter.js';

const all = 'all';

type Typed = {
  readonly person: string;
  readonly command: string;
  readonly job: string;
  readonly plate: string;
  readonly from: string;
  readonly to: string;
};
const nothing: Typed = { person: all, command: all, job: '', plate: '', from: '', to: '' };

/** The id of what people know by a number or a plate; null: there is none. */
const idOf = async (typed: string, kind: 'job' | 'vehicle'): Promise<string | null> => {
  const { items } = await call<FindView>('GET', `/api/find?q=${encodeURIComponent(typed)}`);
  const found = items.find((item) => item.kind === kind && (item.kind !== 'job' || String(item.number) === typed));
  return found?.id ?? null;
};

const orNothing = (value: string): string | undefined => (value === '' || value === all ? undefined : value);

/** The kinds of entry, each by its sentence without what it is about. */
const useKinds = (): { readonly value: string; readonly label: string }[] => {
  const { t } = useText();
  const empty = {
    about: 'empty',
    answer: 'empty',
    outcome: 'empty',
    how: 'empty',
    kind: 'empty',
    month: '',
    reason: '',
    promised: 'empty',
  };
  return [...(commandNames as readonly string[])]
    .flatMap((name) => {
      const key = `log.${name}`;
      return isTextKey(key) ? [{ value: name, label: t(key, empty).trim() }] : [];
    })
    .sort((a, b) => a.label.localeCompare(b.label));
};

type DayProps = { readonly typed: Typed; readonly onChange: (part: Partial<Typed>) => void };

const DayFields = ({ typed, onChange }: DayProps): ReactElement => {
  const { t } = useText();
  return (
    <>
      <DateField
        label={t('record.from')}
        value={typed.from}
        onChange={(from) => {
          onChange({ from });
        }}
      />
      <DateField
        label={t('record.to')}
        value={typed.to}
        onChange={(to) => {
          onChange({ to });
        }}
      />
    </>
  );
};

const Acts = ({ onClear }: { readonly onClear: () => void }): ReactElement => {
  const { t } = useText();
  return (
    <>
      <Button look="ink" type="submit" onPress={() => undefined}>
        {t('record.filter')}
      </Button>
      <Button look="plain" onPress={onClear}>
        {t('record.clear')}
      </Button>
    </>
  );
};

/** Person, kind of entry, job, plate and days; what is typed counts when it is asked for. */
export const FilterFields = (props: {
  readonly filter: Filter;
  readonly onChange: (filter: Filter) => void;
}): ReactElement => {
  const { t } = useText();
  const people = [...useBoard().tables.person.values()].sort((a, b) => a.name.localeCompare(b.name));
  const [typed, setTyped] = useState<Typed>(nothing);
  const [wrong, setWrong] = useState<{ readonly job?: boolean; readonly plate?: boolean }>({});
  const change = (part: Partial<Typed>): void => {
    setTyped((before) => ({ ...before, ...part }));
    setWrong({});
  };
  const show = async (): Promise<void> => {
    const job = typed.job.trim() === '' ? undefined : await idOf(typed.job.trim(), 'job');
    const vehicle = typed.plate.trim() === '' ? undefined : await idOf(typed.plate.trim(), 'vehicle');
    setWrong({ job: job === null, plate: vehicle === null });
    if (job === null || vehicle === null) return;
    const { person, command, from, to } = typed;
    const said = { person: orNothing(person), command: orNothing(command), from: orNothing(from), to: orNothing(to) };
    props.onChange({ ...said, job, vehicle });
  };
  const kinds = useKinds();
  return (
    <form
      className="hf-record-filter"
      onSubmit={(event) => {
        event.preventDefault();
        void show();
      }}
    >
      <Select
        label={t('record.person')}
        value={typed.person}
        options={[
          { value: all, label: t('record.everybody') },
          ...people.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChange={(person) => {
          change({ person });
        }}
      />
      <Select
        label={t('record.command')}
        value={typed.command}
        options={[{ value: all, label: t('record.everything') }, ...kinds]}
        onChange={(command) => {
          change({ command });
        }}
      />
      <Field
        label={t('record.job')}
        value={typed.job}
        onChange={(job) => {
          change({ job });
        }}
        wrong={wrong.job === true ? t('record.noSuchJob') : null}
      />
      <Field
        label={t('record.plate')}
        code
        value={typed.plate}
        onChange={(plate) => {
          change({ plate });
        }}
        wrong={wrong.plate === true ? t('record.noSuchVehicle') : null}
      />
      <DayFields typed={typed} onChange={change} />
      <Acts
        onClear={() => {
          change(nothing);
          props.onChange({});
        }}
      />
    </form>
  );
};
