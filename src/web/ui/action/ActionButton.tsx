import type { ReactNode } from 'react';
import look from '../Button.module.css';
import layout from '../layout.module.css';
import { type Action, canRun } from './action.ts';

/**
 * An action as a button. `isMain` for the one that a screen or form is there for; `submits` inside the form of the same action, so that the
 * enter key does it too; `children` where the button shows something else than words.
 */
export function ActionButton(given: {
  readonly action: Action;
  readonly isMain?: boolean;
  readonly submits?: boolean;
  readonly isOnPaper?: boolean;
  readonly children?: ReactNode;
}) {
  const { action, isMain = false, submits = false, children } = given;
  const { label, about, shortcut, run } = action;
  return (
    <button
      type={submits ? 'submit' : 'button'}
      className={`${isMain ? look.act : look.quiet} ${layout.noprint}`}
      disabled={!canRun(action)}
      aria-busy={action.isBusy === true ? true : undefined}
      aria-label={about}
      aria-keyshortcuts={shortcut}
      title={shortcut === undefined ? undefined : `${about ?? label} (${keysOf(shortcut)})`}
      {...(submits ? {} : { onClick: run })}
    >
      {children ?? label}
    </button>
  );
}

/** "Ctrl+S", as keyboards print it */
export function keysOf(shortcut: string): string {
  return shortcut.replace('Control', 'Ctrl');
}
