import type { Row } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { ToggleButton } from 'react-aria-components';

import './axle-ladder.css';
import { useText } from '../text/use-text.js';
import { Mark } from '../ui/marks/mark.js';
import { stateOfWheel, type Rung, type WheelState } from './axle-ladder-model.js';
import { wheelWords, torqueWords } from './wheel-words.js';

type Wheel = Row<'wheelRecord'>;

export type LadderProps = {
  readonly rungs: readonly Rung[];
  /** The record that counts of each place. */
  readonly wheels: readonly Wheel[];
  /** The spare is a rung of its own, where there is something to say of it or it can be chosen. */
  readonly withSpare: boolean;
  readonly chosen?: readonly string[];
  readonly onChosen?: (positions: readonly string[]) => void;
};

/** A wheel as a bar: full as it was, an open dashed one off, a hatched one without its torque, a full one ticked. */
const Bar = ({ state }: { readonly state: WheelState }): ReactElement => (
  <Mark title={null} size={44} grid={[20, 44]} className={`hf-wheel-bar hf-wheel-${state}`}>
    <rect x="3" y="2" width="14" height="40" rx="4" />
    {state === 'untorqued' && <path d="M3.5 14 16.5 6M3.5 24 16.5 16M3.5 34 16.5 26M8 40 16.5 35" />}
    {state === 'torqued' && <path d="m6 22 3 4 6-8" />}
  </Mark>
);

const Place = (props: LadderProps & { readonly position: string }): ReactElement => {
  const text = useText();
  const { t } = text;
  const { position, chosen = [], onChosen } = props;
  const wheel = props.wheels.find((one) => one.position === position);
  const state = stateOfWheel(wheel);
  const value = wheel !== undefined && state === 'torqued' ? torqueWords(wheel, text) : t(`wheel.state.${state}`);
  const inside = (
    <>
      <Bar state={state} />
      <span className="hf-wheel-value">{value}</span>
    </>
  );
  const label = `${wheelWords(position, t)}: ${value}`;
  if (onChosen === undefined) {
    return (
      <span className="hf-wheel" role="img" aria-label={label} data-wheel={position} data-state={state}>
        {inside}
      </span>
    );
  }
  return (
    <ToggleButton
      className="hf-wheel hf-wheel-choice"
      aria-label={label}
      data-wheel={position}
      data-state={state}
      isSelected={chosen.includes(position)}
      onChange={(isOn) => {
        onChosen(isOn ? [...chosen, position] : chosen.filter((one) => one !== position));
      }}
    >
      {inside}
    </ToggleButton>
  );
};

/**
 * The wheels of a vehicle as a ladder: one rung for each axle, the front one on top, a bar for each wheel at its ends; the
 * spare hangs below. It shows where wheels are, and nothing of the vehicle's shape.
 */
export const AxleLadder = (props: LadderProps): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-ladder" role="group" aria-label={t('wheel.ladder')}>
      {props.rungs.map(({ axle, left, right }) => (
        <div key={axle} className="hf-rung" {...(right.length === 0 ? { 'data-middle': true } : {})}>
          <span className="hf-rung-end">
            {left.map((position) => (
              <Place key={position} {...props} position={position} />
            ))}
          </span>
          <span className="hf-rung-name">{t('wheel.axle', { axle })}</span>
          <span className="hf-rung-end">
            {right.map((position) => (
              <Place key={position} {...props} position={position} />
            ))}
          </span>
        </div>
      ))}
      {props.withSpare && (
        <div className="hf-rung hf-rung-spare">
          <span className="hf-rung-name">{t('wheel.spare')}</span>
          <Place {...props} position="spare" />
        </div>
      )}
    </div>
  );
};
