import { type ReactNode, useRef, useState } from 'react';
import { keysOf } from './action/ActionButton.tsx';
import type { Action, Shortcut } from './action/action.ts';
import { useOffered } from './action/offered.ts';
import look from './Button.module.css';
import type { TypedRow, TypedRows } from './form/typed.ts';
import layout from './layout.module.css';
import styles from './RowsEditor.module.css';

/**
 * Entries of one kind, each with its fields in a row and the button that takes it out. After "add" the new entry's first field has the focus;
 * after "take out" the button that adds.
 */
export function RowsEditor<Item>(given: {
  readonly label: string;
  readonly rows: TypedRows<Item>;
  /** What an entry begins as; without it none is added here. */
  readonly blank?: () => Item;
  readonly addLabel?: string;
  /** With it adding is offered to the keyboard and the palette. */
  readonly addShortcut?: Shortcut;
  /** How an entry is called where it is taken out: "the weight 70 kg". */
  readonly nameOf: (item: Item, index: number) => string;
  readonly empty?: string;
  /** What stands over an entry that is too large for one row: its fields then stand below each other, in a frame of their own. */
  readonly legendOf?: (item: Item, index: number) => string;
  readonly children: (row: TypedRow<Item>, index: number) => ReactNode;
  /** Stands between the entries and the button that adds one. */
  readonly below?: ReactNode;
}) {
  const { label, rows, blank, addLabel = 'Add one', addShortcut, nameOf, empty, legendOf, children, below } = given;
  // An entry keeps its fields when one before it is taken out: a browser holds text there that is no number or no day yet, and it alone.
  const [known, setKnown] = useState<{ readonly keys: readonly number[]; readonly next: number }>({ keys: [], next: 0 });
  const keys = rows.each.map((_, at) => known.keys[at] ?? known.next + at - known.keys.length);
  const box = useRef<HTMLFieldSetElement>(null);
  const adds = useRef<HTMLButtonElement>(null);
  const add: Action = {
    label: addLabel,
    ...(addShortcut === undefined ? {} : { shortcut: addShortcut }),
    run: () => {
      if (blank !== undefined) rows.add(blank());
      // The new entry stands after the next drawing.
      requestAnimationFrame(() => {
        const entries = box.current?.querySelectorAll<HTMLElement>('[data-entry]');
        entries?.[entries.length - 1]?.querySelector<HTMLElement>('input, select, textarea')?.focus();
      });
    },
  };
  useOffered(addShortcut === undefined ? [] : [add]);
  return (
    <fieldset className={layout.stack} ref={box}>
      <legend>{label}</legend>
      {rows.each.length === 0 && empty !== undefined && <p>{empty}</p>}
      {rows.each.map((row, at) => (
        <Entry legend={legendOf?.(row.values, at)} key={keys[at]}>
          {children(row, at)}
          <button
            type="button"
            className={look.quiet}
            aria-label={`Take out ${nameOf(row.values, at)}`}
            onClick={() => {
              row.remove();
              setKnown({ keys: keys.toSpliced(at, 1), next: Math.max(known.next, ...keys) + 1 });
              adds.current?.focus();
            }}
          >
            Take out
          </button>
        </Entry>
      ))}
      {below}
      {blank !== undefined && (
        <button
          type="button"
          className={look.quiet}
          ref={adds}
          aria-keyshortcuts={addShortcut}
          title={addShortcut === undefined ? undefined : `${addLabel} (${keysOf(addShortcut)})`}
          onClick={add.run}
        >
          {addLabel}
        </button>
      )}
    </fieldset>
  );
}

function Entry({ legend, children }: { readonly legend: string | undefined; readonly children: ReactNode }) {
  if (legend === undefined)
    return (
      <div className={styles.entry} data-entry>
        {children}
      </div>
    );
  return (
    <fieldset className={layout.stack} data-entry>
      <legend>{legend}</legend>
      {children}
    </fieldset>
  );
}
