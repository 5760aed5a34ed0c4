import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useSetAside } from './actions.ts';

const words = {
  altered: 'changed outside this program or by a failing disk',
  truncated: 'cut short',
  emptied: 'emptied',
  missing: 'missing',
  exchanged: 'exchanged for another or an older one',
  added: 'put there from outside',
} as const;

/** Says what in the file of clients is not whole, and moves it aside. */
export function Damaged() {
  const health = useQuery({ queryKey: ['clients', 'health'], queryFn: () => answer(api.clients.health.$get()), gcTime: 0 });
  const { setAside, file, fault } = useSetAside();
  if (file !== undefined) {
    return (
      <p className={layout.notice} role="status">
        What was damaged is now in {file}, in the data folder.
      </p>
    );
  }
  if (health.data === undefined) return <Told error={health.error} />;
  const { damaged, index } = health.data;
  const kinds = Object.entries(words).flatMap(([kind, said]) => {
    const count = Object.entries(damaged).find(([one]) => one === kind)?.[1] ?? 0;
    return count === 0 ? [] : [{ kind, count, said }];
  });
  if (kinds.length === 0 && index === 'whole') return null;
  return (
    <section className={layout.notice} role="alert" aria-label="Damaged client records">
      <p>
        <b>Not all client records are whole.</b> What is whole stands below.
      </p>
      <ul>
        {kinds.map(({ kind, count, said }) => (
          <li key={kind}>
            {count} {said}
          </li>
        ))}
        {index !== 'whole' && (
          <li>The index is {index}: nothing is saved before it is made anew, and a record that was taken away cannot be told.</li>
        )}
      </ul>
      <p>Next: put the data folder back from a backup. Or set aside what is damaged: it is moved into a file of its own, not deleted.</p>
      <Told error={fault} />
      <p>
        <ActionButton action={setAside} isMain />
      </p>
    </section>
  );
}
