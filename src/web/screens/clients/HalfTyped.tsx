import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { dayAndTime } from '../../ui/draft/Draft.tsx';
import layout from '../../ui/layout.module.css';
import { goOnWith, type OpenForm } from './clientActions.ts';

const words = { assessment: 'An assessment was begun', results: 'Results were begun' } as const;

/** What was begun about this client in a form that is closed now, and not kept: by a lock, a reload or a crash. */
export function HalfTyped({ clientId, open }: { readonly clientId: string; readonly open: (form: OpenForm) => void }) {
  const drafts = useQuery({ queryKey: ['clients', 'drafts'], queryFn: () => answer(api.clients.drafts.$get()), gcTime: 0, staleTime: 0 });
  return drafts.data?.map(({ clientId: about, form, savedAt }) =>
    about === clientId && (form === 'assessment' || form === 'results') ? (
      <div key={form} className={`${layout.notice} ${layout.row} ${layout.noprint}`} role="status">
        <span>
          {words[form]} on {dayAndTime(savedAt)} and not kept.
        </span>
        <ActionButton action={goOnWith(form, open)} />
      </div>
    ) : null,
  );
}
