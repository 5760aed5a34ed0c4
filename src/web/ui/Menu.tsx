import { type FocusEvent, type KeyboardEvent, type ToggleEvent, useId, useRef, useState } from 'react';
import { focusByKey } from './focusByKey.ts';
import styles from './Menu.module.css';

interface MenuEntry {
  readonly key: string;
  readonly words: string;
  readonly isDisabled?: boolean;
}

/** Something that can be done; the menu closes when it is chosen. */
export interface MenuAction extends MenuEntry {
  readonly onChoose: () => void;
}

/** Something that can be ticked; the menu stays open, for several may be wanted. */
export interface MenuTick extends MenuEntry {
  readonly isTicked: boolean;
  readonly onTick: (isTicked: boolean) => void;
}

/**
 * A button that opens a list of actions, or a group of ticks under a `legend`. Arrow keys, Home, End and the first letters
 * move in it; Escape, a press elsewhere and Tab out of it close it. It keeps inside the window.
 */
export function Menu(
  given: { readonly label: string; readonly isDisabled?: boolean } & (
    | { readonly actions: readonly MenuAction[] }
    | { readonly legend: string; readonly ticks: readonly MenuTick[] }
  ),
) {
  const { label, isDisabled = false } = given;
  const list = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const [isOpen, setOpen] = useState(false);
  const listId = useId();
  const buttonId = useId();
  const entries = (): HTMLElement[] => [...(list.current?.querySelectorAll<HTMLElement>('[role="menuitem"], input') ?? [])];
  const close = (): void => list.current?.hidePopover();
  const isActions = 'actions' in given;
  const opened = {
    ref: list,
    id: listId,
    popover: 'auto' as const,
    className: styles.list,
    onToggle(event: ToggleEvent) {
      setOpen(event.newState === 'open');
    },
    onKeyDown(event: KeyboardEvent) {
      focusByKey(event, entries());
    },
    // Tab went elsewhere. A press elsewhere closes it without this.
    onBlur({ relatedTarget: to }: FocusEvent) {
      if (to instanceof Node && to !== button.current && !list.current?.contains(to)) close();
    },
  };
  return (
    <span className={styles.menu}>
      <button
        type="button"
        id={buttonId}
        ref={button}
        className={styles.button}
        popoverTarget={listId}
        aria-haspopup={isActions ? 'menu' : undefined}
        aria-expanded={isOpen}
        disabled={isDisabled}
        // Before the browser does it, which tells of it a moment later: the next key would still meet the button.
        onClick={event => {
          event.preventDefault();
          const isShown = list.current?.togglePopover() === true;
          setOpen(isShown);
          if (isShown)
            entries()
              .find(entry => !entry.matches(':disabled'))
              ?.focus();
        }}
        onKeyDown={event => {
          if (event.key !== 'ArrowDown' || list.current?.matches(':popover-open')) return;
          event.preventDefault();
          button.current?.click();
        }}
      >
        {label}
      </button>
      {isActions ? (
        <div {...opened} role="menu" aria-labelledby={buttonId}>
          {given.actions.map(({ key, words, isDisabled: isOff, onChoose }) => (
            <button
              key={key}
              type="button"
              role="menuitem"
              tabIndex={-1}
              className={styles.action}
              disabled={isOff}
              onClick={() => {
                close();
                onChoose();
              }}
            >
              {words}
            </button>
          ))}
        </div>
      ) : (
        <div {...opened}>
          <fieldset className={styles.ticks}>
            <legend>{given.legend}</legend>
            {given.ticks.map(({ key, words, isTicked, isDisabled: isOff, onTick }) => (
              <label key={key} className={styles.tick}>
                <input type="checkbox" checked={isTicked} disabled={isOff} onChange={event => onTick(event.target.checked)} />
                <span>{words}</span>
              </label>
            ))}
          </fieldset>
        </div>
      )}
    </span>
  );
}
