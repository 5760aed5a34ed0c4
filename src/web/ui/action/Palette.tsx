import { useState } from 'react';
import { Combobox } from '../Combobox.tsx';
import { Dialog } from '../Dialog.tsx';
import { ActionButton, keysOf } from './ActionButton.tsx';
import type { Action } from './action.ts';
import { nameOf, runOffered, useActionsNow, useOffered } from './offered.ts';

/** Everything that can be done on the open screen, found by typing; opened by its own shortcut from anywhere. */
export function Palette() {
  const [isOpen, setOpen] = useState(false);
  const find: Action = { label: 'Find an action', shortcut: 'Control+K', run: () => setOpen(true) };
  useOffered([find]);
  return (
    <>
      <ActionButton action={find} />
      {isOpen && <Choosing onClose={() => setOpen(false)} />}
    </>
  );
}

function Choosing({ onClose }: { readonly onClose: () => void }) {
  const actions = useActionsNow().filter(({ shortcut }) => shortcut !== 'Control+K');
  const choices = actions.map(action => ({
    key: nameOf(action),
    words: nameOf(action),
    ...(action.shortcut === undefined ? {} : { note: keysOf(action.shortcut) }),
  }));
  const close: Action = { label: 'Close', run: onClose };
  return (
    <Dialog title="What can be done here" onClose={onClose} buttons={<ActionButton action={close} />}>
      <Combobox
        label="Action"
        hint="Type a word of it; the arrow keys choose, Enter does it."
        chosen={undefined}
        choices={choices}
        onChoose={choice => {
          if (choice === undefined) return;
          onClose();
          // After the dialog has given the focus back: what the action opens may take it.
          setTimeout(() => runOffered(choice.key));
        }}
      />
    </Dialog>
  );
}
