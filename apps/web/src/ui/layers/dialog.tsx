// ui/layers/ hides what lies over a screen. It guarantees that a layer keeps the focus inside, closes by Esc and by a
// button that says so, gives the focus back, and neither slides nor fades.
import type { ReactElement, ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';

import './layers.css';
import { useText } from '../../text/use-text.js';
import { Button } from '../button.js';

type LayerProps = {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly heading: string;
  readonly children: ReactNode;
  /** The acts at the foot; the way out is added by the layer. */
  readonly acts?: ReactNode;
  /** Words on the way out where "Close" would be wrong: "Put back". */
  readonly closeLabel?: string;
};

const Layer = (props: LayerProps & { readonly form: 'dialog' | 'sheet' }): ReactElement => {
  const { t } = useText();
  return (
    <ModalOverlay
      className={`hf-veil hf-veil-${props.form}`}
      isOpen={props.isOpen}
      isDismissable
      onOpenChange={(open) => {
        if (!open) props.onClose();
      }}
    >
      <Modal className={`hf-layer hf-layer-${props.form}`}>
        <AriaDialog className="hf-layer-inside">
          <Heading slot="title" level={2}>
            {props.heading}
          </Heading>
          <div className="hf-layer-body hf-stack">{props.children}</div>
          <div className="hf-layer-acts">
            {props.acts}
            <Button onPress={props.onClose}>{props.closeLabel ?? t('layer.close')}</Button>
          </div>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
};

/** A box in the middle: one question or one small form. */
export const Dialog = (props: LayerProps): ReactElement => <Layer {...props} form="dialog" />;

/** A sheet at the edge (the foot on a phone, the side at a desk): longer forms, with the screen still in sight. */
export const Sheet = (props: LayerProps): ReactElement => <Layer {...props} form="sheet" />;
