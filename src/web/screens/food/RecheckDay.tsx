import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Label } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';

/** The day by which a package is read again. When another window set one meanwhile, that is told and the day that was typed stays. */
export function RecheckDay({ label, onChanged }: { readonly label: Label; readonly onChanged: () => void }) {
  const standing = label.recheckOn ?? '';
  const [typed, setTyped] = useState<{ readonly day: string; readonly seen: string }>();
  const set = useMutation({
    mutationFn: ({ day, seen }: { readonly day: string; readonly seen: string }) =>
      answer(api.labels[':id'].recheck.$put({ param: { id: label.id }, json: { seenDueOn: seen || null, dueOn: day || null } })),
    onSuccess: () => setTyped(undefined),
    onSettled: onChanged,
  });
  const isOpen = typed !== undefined && typed.day !== standing;
  return (
    <form
      className={layout.row}
      onSubmit={event => {
        event.preventDefault();
        // Once it was told, what stands now is on the screen and was seen.
        if (isOpen) set.mutate(set.isError ? { ...typed, seen: standing } : typed);
      }}
    >
      <label className={layout.row}>
        <span className={text.small}>Recheck by</span>
        <input
          type="date"
          value={typed?.day ?? standing}
          onChange={event => setTyped({ day: event.target.value, seen: typed?.seen ?? standing })}
        />
      </label>
      {isOpen && (
        <button type="submit" className={button.quiet} disabled={set.isPending}>
          {typed.day === '' ? 'Clear this day' : 'Set this day'}
        </button>
      )}
      {set.isError && isOpen && <span className={text.small}>{standing === '' ? 'No day is set now.' : `Set now: ${standing}.`}</span>}
      <Told error={set.error} />
    </form>
  );
}
