import { type ReactNode, type Ref, useRef } from 'react';
import { type Action, canRun } from './action.ts';
import { useOffered } from './offered.ts';

/** A form that does one action when it is sent, by its button, the enter key, the shortcut or the palette; fields that are required are asked for first. */
export function ActionForm(given: {
  readonly action: Action;
  readonly className?: string;
  readonly label?: string;
  /** False for forms of which there are many, one a row: the palette is for what there is one of. */
  readonly isOffered?: boolean;
  readonly formRef?: Ref<HTMLFormElement>;
  readonly children: ReactNode;
}) {
  const { action, className, label, isOffered = true, children } = given;
  const form = useRef<HTMLFormElement>(null);
  useOffered(isOffered ? [{ ...action, run: () => form.current?.requestSubmit() }] : []);
  return (
    <form
      ref={node => {
        form.current = node;
        if (typeof given.formRef === 'function') given.formRef(node);
      }}
      className={className}
      aria-label={label}
      onSubmit={event => {
        event.preventDefault();
        if (canRun(action)) action.run();
      }}
    >
      {children}
    </form>
  );
}
