/**
 * What a person may do on a screen: read by its button, by the keyboard and by the palette. A screen's actions stand in its `actions.ts`,
 * so that one place says what can be done there, when, and by which keys.
 */
export interface Action {
  /** On the button and in the palette; a verb first. "Save the plate" */
  readonly label: string;
  /** The whole of it, where the button alone leaves out of what. "Remove the plate rye bread" */
  readonly about?: string;
  /** False while it cannot be done: nothing is chosen, nothing is typed. */
  readonly isPossible?: boolean;
  /** True while it runs. */
  readonly isBusy?: boolean;
  /** As `aria-keyshortcuts` writes it, with a modifier, so that typing is never taken for it. "Control+S" */
  readonly shortcut?: Shortcut;
  readonly run: () => void;
}

type Modifier = 'Alt' | 'Control' | 'Control+Shift' | 'Alt+Shift';
export type Shortcut = `${Modifier}+${string}`;

export function canRun({ isPossible = true, isBusy = false }: Action): boolean {
  return isPossible && !isBusy;
}

type Pressed = Pick<KeyboardEvent, 'key' | 'code' | 'altKey' | 'ctrlKey' | 'metaKey' | 'shiftKey'>;

/**
 * Whether a key that was pressed is the shortcut; on a Mac the command key stands for control. Where the keyboard writes no Latin letter,
 * as with the option key of a Mac or in Cyrillic, the place of the key counts.
 */
export function isPressed(shortcut: Shortcut, event: Pressed): boolean {
  const parts = shortcut.split('+');
  const key = parts.at(-1) ?? '';
  const letter = (/^[ -~]$/.test(event.key) ? event.key : event.code.replace('Key', '')).toLowerCase();
  return (
    letter === key.toLowerCase() &&
    event.altKey === parts.includes('Alt') &&
    (event.ctrlKey || event.metaKey) === parts.includes('Control') &&
    event.shiftKey === parts.includes('Shift')
  );
}
