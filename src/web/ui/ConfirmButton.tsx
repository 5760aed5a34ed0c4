import { useId, useState } from 'react';
import type { Action } from './action/action.ts';
import look from './Button.module.css';
import layout from './layout.module.css';

/** An action that is asked about once more in its own place: what it does is said, and the first button that has the focus is the one that does nothing. */
export function ConfirmButton({ action, question }: { readonly action: Action; readonly question: string }) {
  const questionId = useId();
  const [isAsked, setAsked] = useState(false);
  const { label, about, isPossible = true, isBusy = false, run } = action;
  if (!isAsked)
    return (
      <button
        type="button"
        className={`${look.quiet} ${layout.noprint}`}
        aria-label={about}
        disabled={!isPossible || isBusy}
        onClick={() => setAsked(true)}
      >
        {label}
      </button>
    );
  return (
    <span className={`${layout.row} ${layout.noprint}`}>
      <span id={questionId}>{question}</span>
      <button
        type="button"
        className={look.quiet}
        ref={focus}
        aria-describedby={questionId}
        onKeyDown={event => event.key === 'Escape' && setAsked(false)}
        onClick={() => setAsked(false)}
      >
        No
      </button>
      <button
        type="button"
        className={look.act}
        onClick={() => {
          setAsked(false);
          run();
        }}
      >
        {label}
      </button>
    </span>
  );
}

/** One function for good: another one would take the focus again with every drawing. */
function focus(node: HTMLElement | null): void {
  node?.focus();
}
