import { calendarOfBoard } from '@holdfast/board';
import { type CommandInputs, type HoursOfWeek, roles, type Row, skills } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { NamedSelect } from '../pieces/line-form.js';
import { Tick, Ticks } from '../pieces/ticks.js';
import { said } from '../pieces/typed.js';
import { emptyWeek, isWhole, WeekHours } from '../pieces/week-hours.js';
import { useText } from '../text/use-text.js';
import { DateField } from '../ui/fields/date-time-field.js';
import { Field } from '../ui/fields/field.js';
import { hoursOfPerson, skillsOf } from './person-facts.js';

type Skill = (typeof skills)[number];
type Skills = Readonly<Partial<Record<Skill, string>>>;
type Hours = { readonly validFrom: string; readonly week: HoursOfWeek; readonly breaks: HoursOfWeek };

type SkillsFieldsProps = { readonly value: Skills; readonly onChange: (value: Skills) => void };

/** Which skills, and until when each certificate holds. */
const SkillsFields = ({ value, onChange }: SkillsFieldsProps): ReactElement => {
  const { t } = useText();
  return (
    <fieldset className="hf-group">
      <legend>{t('shop.person.skillsHeld')}</legend>
      {skills.map((skill) => {
        const until = value[skill];
        return (
          <div key={skill} className="hf-skill">
            <Tick
              label={t(`word.skill.${skill}`)}
              value={until !== undefined}
              onChange={(held) => {
                const { [skill]: _left, ...others } = value;
                onChange(held ? { ...others, [skill]: '' } : others);
              }}
            />
            {until !== undefined && (
              <DateField
                label={t('shop.person.until', { skill: t(`word.skill.${skill}`) })}
                value={until}
                onChange={(day) => {
                  onChange({ ...value, [skill]: day });
                }}
              />
            )}
          </div>
        );
      })}
    </fieldset>
  );
};

type HoursFieldsProps = {
  readonly value: Hours | null;
  readonly first: Hours;
  readonly onChange: (value: Hours | null) => void;
};

/** Hours of their own from a day on; left alone, those before go on. */
const HoursFields = ({ value, first, onChange }: HoursFieldsProps): ReactElement => {
  const { t } = useText();
  return (
    <fieldset className="hf-group">
      <legend>{t('shop.person.ownHours')}</legend>
      <Tick
        label={t('shop.person.setHours')}
        value={value !== null}
        onChange={(set) => {
          onChange(set ? first : null);
        }}
      />
      {value && (
        <>
          <DateField
            label={t('shop.validFrom')}
            value={value.validFrom}
            onChange={(validFrom) => {
              onChange({ ...value, validFrom });
            }}
          />
          <WeekHours
            caption={t('shop.person.ownHours')}
            hoursHeading={t('shop.person.present')}
            hours={value.week}
            onHours={(week) => {
              onChange({ ...value, week });
            }}
            breaks={value.breaks}
            onBreaks={(breaks) => {
              onChange({ ...value, breaks });
            }}
          />
        </>
      )}
    </fieldset>
  );
};

const skillList = (held: Skills): { skill: Skill; until?: string }[] =>
  skills.flatMap((skill) => {
    const until = held[skill];
    if (until === undefined) return [];
    return [until === '' ? { skill } : { skill, until }];
  });

const nobody: Pick<Row<'person'>, 'name' | 'roles' | 'homeBayId'> = { name: '', roles: [], homeBayId: null };

const areWhole = ({ validFrom, week, breaks }: Hours): boolean => validFrom !== '' && isWhole(week) && isWhole(breaks);

const usePersonState = (person: Row<'person'> | null) => {
  const board = useBoard();
  const today = calendarOfBoard(board).dateOf(shopNow());
  const own = person ? hoursOfPerson(board, person.id, today) : undefined;
  const held = person ? skillsOf(board, person.id) : [];
  const first = person ?? nobody;
  const [name, setName] = useState(first.name);
  const [chosenRoles, setRoles] = useState(first.roles);
  const [homeBayId, setHomeBayId] = useState(first.homeBayId);
  const [skillsHeld, setSkills] = useState<Skills>(() =>
    Object.fromEntries(held.map((row) => [row.skill, row.until ?? ''])),
  );
  const [hours, setHours] = useState<Hours | null>(null);
  const [password, setPassword] = useState('');
  const firstHours = { validFrom: today, week: own?.week ?? emptyWeek, breaks: own?.breaks ?? emptyWeek };
  const isReady = said(name) !== undefined && chosenRoles.length > 0 && (hours === null || areWhole(hours));
  return {
    ...{
      name,
      setName,
      chosenRoles,
      setRoles,
      homeBayId,
      setHomeBayId,
      skillsHeld,
      setSkills,
      hours,
      setHours,
      password,
      setPassword,
    },
    ...{ firstHours, isReady },
  };
};

type PersonFormProps = {
  /** Null: a new one. */
  readonly person: Row<'person'> | null;
  readonly onClose: () => void;
};

/** A person of the shop: name, roles, skills with their end, home bay, hours, password. */
export const PersonForm = ({ person, onClose }: PersonFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const { tables } = useBoard();
  const form = usePersonState(person);
  const bays = [...tables.bay.values()].filter((bay) => bay.endedOn === null).sort((a, b) => a.position - b.position);
  const send = async (): Promise<void> => {
    const name = form.name.trim();
    const chosen = [...form.chosenRoles];
    const rest = {
      skills: skillList(form.skillsHeld),
      hours: form.hours ?? undefined,
      password: form.password === '' ? undefined : form.password,
    };
    const add: CommandInputs['addPerson'] = {
      personId: newId(),
      name,
      roles: chosen,
      homeBayId: form.homeBayId ?? undefined,
      ...rest,
    };
    const sent = person
      ? await sending.run(
          'changePerson',
          { personId: person.id, version: person.version, name, roles: chosen, homeBayId: form.homeBayId, ...rest },
          { text: 'shop.done.person', values: { name } },
        )
      : await sending.run('addPerson', add, { text: 'shop.done.personAdded', values: { name } });
    if (sent) onClose();
  };
  return (
    <FormSheet
      heading={person ? t('shop.person.changeHeading', { name: person.name }) : t('shop.person.addHeading')}
      command={person ? 'changePerson' : 'addPerson'}
      act={t(person ? 'shop.save' : 'shop.person.addAct')}
      sending={sending}
      ready={form.isReady}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field
        label={t('shop.person.name')}
        value={form.name}
        onChange={form.setName}
        hint={t('shop.person.nameHint')}
        isRequired
      />
      <Ticks
        label={t('shop.person.roles')}
        rows={roles.map((role) => ({ id: role, title: t(`word.role.${role}`) }))}
        value={form.chosenRoles}
        onChange={(ids) => {
          form.setRoles(roles.filter((role) => ids.includes(role)));
        }}
      />
      <NamedSelect
        label={t('shop.person.homeBayField')}
        rows={bays.map((bay) => ({ id: bay.id, title: bay.name }))}
        value={form.homeBayId}
        onChange={form.setHomeBayId}
      />
      <SkillsFields value={form.skillsHeld} onChange={form.setSkills} />
      <HoursFields value={form.hours} first={form.firstHours} onChange={form.setHours} />
      <Field
        label={t(person ? 'shop.person.newPassword' : 'shop.person.password')}
        type="password"
        autoComplete="new-password"
        value={form.password}
        onChange={form.setPassword}
        hint={t(person ? 'shop.person.passwordKept' : 'shop.person.passwordHint')}
      />
    </FormSheet>
  );
};
