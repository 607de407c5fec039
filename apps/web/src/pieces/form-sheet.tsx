// pieces/ hides what several screens share above ui/: the form of each command, the words for limits, and the head of a
// vehicle. It guarantees that a command is asked for in the same words and with the same fields wherever it is sent from,
// that its refusal stands beside the act that met it, and that its button is there only for those who may.
import type { CommandName } from '@holdfast/domain';
import { useState, type ReactElement, type ReactNode } from 'react';

import './pieces.css';
import { Refusal } from '../live/refusal.js';
import { useMay } from '../live/session.js';
import type { Sending } from '../live/use-send.js';
import { Button, type ButtonSize } from '../ui/button.js';
import { Sheet } from '../ui/layers/dialog.js';

type FormSheetProps = {
  readonly heading: string;
  readonly command: CommandName;
  /** Words on the button that sends. */
  readonly act: string;
  readonly sending: Sending;
  /** False while something is missing that the form cannot do without. */
  readonly ready?: boolean;
  readonly jobId?: string;
  readonly onSend: () => void;
  readonly onClose: () => void;
  readonly children?: ReactNode;
};

/** One command's form in a sheet: fields, the refusal if there is one, one act. */
export const FormSheet = (props: FormSheetProps): ReactElement => (
  <Sheet
    isOpen
    onClose={props.onClose}
    heading={props.heading}
    acts={
      <Button
        look="ink"
        command={props.command}
        isPending={props.sending.pending}
        isDisabled={props.ready === false}
        onPress={props.onSend}
      >
        {props.act}
      </Button>
    }
  >
    {props.children}
    <Refusal problem={props.sending.problem} {...(props.jobId === undefined ? {} : { jobId: props.jobId })} />
  </Sheet>
);

type OpenerProps = {
  readonly label: string;
  /** Shown only to those who may send it. */
  readonly command: CommandName;
  readonly size?: ButtonSize;
  readonly look?: 'ink' | 'frame' | 'plain';
  readonly mark?: ReactNode;
  /** What a screen reader says where the label alone does not name the row. */
  readonly about?: string;
  /** The form; it is made anew each time it is opened. */
  readonly children: (close: () => void) => ReactElement;
};

/** A button that opens a command's form. */
export const Opener = (props: OpenerProps): ReactElement | null => {
  const may = useMay();
  const [isOpen, setOpen] = useState(false);
  if (!may.command(props.command)) return null;
  return (
    <>
      <Button
        size={props.size ?? 'small'}
        look={props.look ?? 'frame'}
        {...(props.mark === undefined ? {} : { mark: props.mark })}
        {...(props.about === undefined ? {} : { label: `${props.label}: ${props.about}` })}
        onPress={() => {
          setOpen(true);
        }}
      >
        {props.label}
      </Button>
      {isOpen &&
        props.children(() => {
          setOpen(false);
        })}
    </>
  );
};
