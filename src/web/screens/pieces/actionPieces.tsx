import { useState } from 'react';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import type { Action } from '../../ui/action/action.ts';
import { useOffered } from '../../ui/action/offered.ts';
import { ConfirmButton } from '../../ui/ConfirmButton.tsx';
import layout from '../../ui/layout.module.css';

/** What can be done: as the main button, a quiet one, one that cannot be pressed, one that is busy, one that asks first. */
export function ActionPieces() {
  const [done, setDone] = useState('nothing yet');
  const does = (label: string, rest: Partial<Action> = {}): Action => ({ label, run: () => setDone(label), ...rest });
  const water = does('Water the plant', { shortcut: 'Alt+W' });
  useOffered([water, does('Turn the pot')]);
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="action-pieces">
      <h2 id="action-pieces">Actions</h2>
      <p className={layout.row}>
        <ActionButton action={water} isMain />
        <ActionButton action={does('Turn the pot')} />
        <ActionButton action={does('Cut a flower', { isPossible: false })} />
        <ActionButton action={does('Cut the main flower', { isPossible: false })} isMain />
        <ActionButton action={does('Growing …', { isBusy: true })} />
      </p>
      <ConfirmButton action={does('Throw it away')} question="Throw the plant away? Nothing brings it back." />
      <p role="status">Done: {done}.</p>
    </section>
  );
}
