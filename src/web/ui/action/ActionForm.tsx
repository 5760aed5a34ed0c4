import { type ReactNode, useCallback, useRef } from 'react';
import { type Action, canRun } from './action.ts';
import { useOffered } from './offered.ts';

/** A form that does one action when it is sent, by its button, the enter key, the shortcut or the palette; fields that are required are asked for first. */
export function ActionForm(given: {
  readonly action: Action;
  readonly className?: string;
  readonly label?: string;
  /** False for forms of which there are many, one a row: the palette is for what there is one of. */
  readonly isOffered?: boolean;
  /** False where many figures are typed one after the other: the enter key in a field is then a slip, and sends nothing. */
  readonly isSentByEnter?: boolean;
  readonly formRef?: (form: HTMLFormElement | null) => void;
  readonly children: ReactNode;
}) {
  const { action, className, label, isOffered = true, isSentByEnter = true, formRef, children } = given;
  const form = useRef<HTMLFormElement>(null);
  useOffered(isOffered ? [{ ...action, run: () => form.current?.requestSubmit() }] : []);
  // One function for good: another one would be called with every drawing.
  const place = useCallback(
    (node: HTMLFormElement | null): void => {
      form.current = node;
      formRef?.(node);
    },
    [formRef],
  );
  return (
    <form
      ref={place}
      className={className}
      aria-label={label}
      onKeyDown={event => {
        if (!isSentByEnter && event.key === 'Enter' && event.target instanceof HTMLInputElement) event.preventDefault();
      }}
      onSubmit={event => {
        event.preventDefault();
        if (canRun(action)) action.run();
      }}
    >
      {children}
    </form>
  );
}
