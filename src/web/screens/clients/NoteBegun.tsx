import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { dayAndTime } from '../../ui/draft/Draft.tsx';
import layout from '../../ui/layout.module.css';
import { goOnWithNote } from './noteActions.ts';

/** That a note was begun and not kept: by a lock, a reload or a crash. */
export function NoteBegun({ clientId, write }: { readonly clientId: string; readonly write: () => void }) {
  const drafts = useQuery({ queryKey: ['clients', 'drafts'], queryFn: () => answer(api.clients.drafts.$get()), gcTime: 0, staleTime: 0 });
  const begun = drafts.data?.find(({ clientId: about, form }) => about === clientId && form === 'note');
  if (begun === undefined) return null;
  return (
    <div className={`${layout.notice} ${layout.row} ${layout.noprint}`} role="status">
      <span>A note was begun on {dayAndTime(begun.savedAt)} and not kept.</span>
      <ActionButton action={goOnWithNote(() => write())} />
    </div>
  );
}
