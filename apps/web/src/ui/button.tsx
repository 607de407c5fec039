// ui/ hides react-aria and every control the screens are built of. It guarantees that all acts happen on release, that no
// target is below 44 px (64 in general, 128 for the acts at a bay), that nothing needs a drag, a swipe or a long press,
// and that the same words, focus marks and shapes stand on every screen.
import type { CommandName } from '@holdfast/domain';
import { useEffect, useRef, type ReactElement, type ReactNode } from 'react';
import { Button as AriaButton, type PressEvent } from 'react-aria-components';

import './button.css';

/** 44 px for dense desks, 64 px in general, 128 px for what is pressed with gloves at the bay. */
export type ButtonSize = 'small' | 'normal' | 'act';

export type ButtonProps = {
  readonly children: ReactNode;
  readonly onPress: () => void;
  readonly size?: ButtonSize;
  /** `ink` is the one act a screen is about, `plain` has no frame. */
  readonly look?: 'ink' | 'frame' | 'plain';
  /** A mark above (act) or before (other sizes) the words. */
  readonly mark?: ReactNode;
  /** A second, quieter line: what would follow. */
  readonly follows?: string;
  readonly isDisabled?: boolean;
  /** The act is on its way; further presses are ignored. A form that submits by it asks for itself. */
  readonly isPending?: boolean;
  readonly pressed?: boolean;
  readonly label?: string;
  readonly type?: 'button' | 'submit';
  /** The command that a press finally sends: stands on the button as `data-command`. */
  readonly command?: CommandName;
};

// A finger still on the glass when a screen changes must not act on the new one.
const settleMilliseconds = 400;

/** A button that acts on release. An `act` ignores touches in the first 0.4 s after it appeared. */
export const Button = (props: ButtonProps): ReactElement => {
  const { size = 'normal', look = 'frame' } = props;
  const shownAt = useRef(0);
  useEffect(() => {
    shownAt.current = performance.now();
  }, []);
  const press = (event: PressEvent): void => {
    if (props.isPending === true) return;
    const touched = event.pointerType === 'touch' || event.pointerType === 'pen';
    if (size === 'act' && touched && performance.now() - shownAt.current < settleMilliseconds) return;
    props.onPress();
  };
  return (
    <AriaButton
      className={`hf-button hf-button-${size} hf-look-${look}${props.isPending === true ? ' hf-is-pending' : ''}`}
      onPress={press}
      type={props.type ?? 'button'}
      {...(props.command === undefined ? {} : { 'data-command': props.command })}
      isDisabled={props.isDisabled ?? false}
      {...(props.pressed === undefined ? {} : { 'aria-pressed': props.pressed })}
      {...(props.label === undefined ? {} : { 'aria-label': props.label })}
    >
      {props.mark}
      <span className="hf-button-words">
        {props.children}
        {props.follows !== undefined && <small>{props.follows}</small>}
      </span>
    </AriaButton>
  );
};
