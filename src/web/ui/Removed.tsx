import button from './Button.module.css';
import layout from './layout.module.css';
/** Says what was just removed, with the button that brings it back. */
export function Removed({ name, onUndo }: { readonly name: string; readonly onUndo: () => void }) {
  return (
    <div className={`${layout.notice} ${layout.row}`} role="status">
      <span>Removed: {name}.</span>
      <button type="button" className={button.quiet} onClick={onUndo}>
        Undo
      </button>
    </div>
  );
}
