/** Says what was just removed, with the button that brings it back. */
export function Removed({ name, onUndo }: { readonly name: string; readonly onUndo: () => void }) {
  return (
    <div className="notice row" role="status">
      <span>Removed: {name}.</span>
      <button type="button" className="quiet" onClick={onUndo}>
        Undo
      </button>
    </div>
  );
}
