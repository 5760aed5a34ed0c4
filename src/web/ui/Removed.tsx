import { ActionButton } from './action/ActionButton.tsx';
import type { Action } from './action/action.ts';
import layout from './layout.module.css';

/** Says what was just removed, with the action that brings it back. */
export function Removed({ name, undo }: { readonly name: string; readonly undo: Action }) {
  return (
    <div className={`${layout.notice} ${layout.row}`} role="status">
      <span>Removed: {name}.</span>
      <ActionButton action={undo} />
    </div>
  );
}
