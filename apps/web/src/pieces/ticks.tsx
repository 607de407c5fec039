import type { ReactElement } from 'react';
import { CheckboxButton, CheckboxField, CheckboxGroup, Label, Text } from 'react-aria-components';

import './ticks.css';
import type { Named } from './line-form.js';

type TicksProps = {
  readonly label: string;
  readonly hint?: string;
  readonly rows: readonly Named[];
  readonly value: readonly string[];
  readonly onChange: (ids: readonly string[]) => void;
};

const Box = ({ children }: { readonly children: string }): ReactElement => (
  <>
    <svg className="hf-tick-box" aria-hidden="true" width="28" height="28" viewBox="0 0 28 28">
      <rect x="1.5" y="1.5" width="25" height="25" rx="2" />
      <path d="m7 14.5 5 5 9.5-11" />
    </svg>
    <span>{children}</span>
  </>
);

/** Any of several, all in sight. */
export const Ticks = ({ label, hint, rows, value, onChange }: TicksProps): ReactElement => (
  <CheckboxGroup className="hf-field" value={[...value]} onChange={onChange}>
    <Label>{label}</Label>
    <div className="hf-ticks">
      {rows.map((row) => (
        <CheckboxField key={row.id} value={row.id}>
          <CheckboxButton className="hf-tick">
            <Box>{row.title}</Box>
          </CheckboxButton>
        </CheckboxField>
      ))}
    </div>
    {hint !== undefined && (
      <Text slot="description" className="hf-hint">
        {hint}
      </Text>
    )}
  </CheckboxGroup>
);

type TickProps = {
  readonly label: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
};

/** Yes or not yes. */
export const Tick = ({ label, value, onChange }: TickProps): ReactElement => (
  <CheckboxField isSelected={value} onChange={onChange}>
    <CheckboxButton className="hf-tick">
      <Box>{label}</Box>
    </CheckboxButton>
  </CheckboxField>
);
