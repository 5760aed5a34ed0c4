import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';
import { ActionForm } from './action/ActionForm.tsx';
import type { Action } from './action/action.ts';
import styles from './Dialog.module.css';

/**
 * What must be answered before anything else goes on. It is open for as long as it is drawn: Escape asks to close it, as
 * the buttons do, and focus goes back to where it was. With an action it is a form, and Enter in a field does it.
 */
export function Dialog({
  title,
  children,
  buttons,
  onClose,
  action,
}: {
  readonly title: string;
  readonly children: ReactNode;
  readonly buttons: ReactNode;
  readonly onClose: () => void;
  /** What it asks for: one of the buttons, which submits. */
  readonly action?: Action;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const titleId = useId();
  // Before the elements are taken away: an element that has gone gives no focus back.
  useLayoutEffect(() => {
    const opened = dialog.current;
    opened?.showModal();
    // Not to a button: a second press of Enter must not be an answer.
    const first = opened?.querySelector<HTMLElement>('input, select, textarea') ?? heading.current;
    first?.focus();
    return () => opened?.close();
  }, []);
  const inside = (
    <>
      <h2 className={styles.title} id={titleId} tabIndex={-1} ref={heading}>
        {title}
      </h2>
      <div className={styles.body}>{children}</div>
      <div className={styles.buttons}>{buttons}</div>
    </>
  );
  return (
    <dialog
      ref={dialog}
      className={styles.dialog}
      aria-labelledby={titleId}
      onCancel={event => {
        // A file field inside sends a cancel of its own.
        if (event.target !== dialog.current) return;
        event.preventDefault();
        onClose();
      }}
      // The browser lets nobody hold back a second Escape.
      onClose={() => {
        if (dialog.current?.open === false) onClose();
      }}
    >
      {action === undefined ? (
        <div className={styles.content}>{inside}</div>
      ) : (
        // The palette stays shut while a dialog is open.
        <ActionForm action={action} className={styles.content} isOffered={false}>
          {inside}
        </ActionForm>
      )}
    </dialog>
  );
}
