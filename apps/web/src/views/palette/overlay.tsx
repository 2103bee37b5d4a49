import type { ReactNode } from 'react';
import { Modal, ModalOverlay } from 'react-aria-components';
import styles from './palette.module.css';

interface OverlayProps {
  readonly width: 'modal' | 'wide';
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A dialog over the page: Escape, or a press beside it, closes it. */
export function Overlay({ width, onClose, children }: OverlayProps) {
  return (
    <ModalOverlay
      isOpen
      isDismissable
      className={styles.overlay ?? ''}
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose();
      }}
    >
      <Modal className={styles[width] ?? ''}>{children}</Modal>
    </ModalOverlay>
  );
}
