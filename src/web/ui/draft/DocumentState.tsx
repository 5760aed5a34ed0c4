import { Problem } from '../../api.ts';
import { ActionButton } from '../action/ActionButton.tsx';
import type { Action } from '../action/action.ts';
import layout from '../layout.module.css';
import { Told } from '../Told.tsx';
import text from '../text.module.css';
import { Draft } from './Draft.tsx';
import type { DocumentInHand } from './useDocument.ts';

/** Whether what stands in the form is saved. */
export function SavedOrNot({ isSaved, isSaving }: Pick<DocumentInHand<object>, 'isSaved' | 'isSaving'>) {
  return (
    <span className={text.soft} role="status">
      {isSaving ? 'Saving …' : isSaved ? 'Saved' : 'Not saved yet'}
    </span>
  );
}

/** What came back of an earlier visit, what went wrong with saving, and the two ways on after somebody else has changed the same. */
export function DocumentTold({ draft, error, settle }: Pick<DocumentInHand<object>, 'draft' | 'error' | 'settle'>) {
  const keepMine: Action = { label: 'Keep what is typed here', run: () => void settle('keep mine') };
  const takeTheirs: Action = { label: 'Take the other state, give up what is typed here', run: () => void settle('take theirs') };
  return (
    <>
      <Draft draft={draft} />
      <Told error={error} />
      {error instanceof Problem && error.code === 'changed-meanwhile' && (
        <p className={layout.row}>
          <ActionButton action={keepMine} />
          <ActionButton action={takeTheirs} />
        </p>
      )}
    </>
  );
}
