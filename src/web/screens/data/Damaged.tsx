import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import layout from '../../ui/layout.module.css';

/** What was damaged behind the program's back. It is passed over everywhere, kept as it is, and goes along with an export. */
export function Damaged() {
  const damaged = useQuery({ queryKey: ['damaged'], queryFn: () => answer(api.workspace.damaged.$get()) });
  if (damaged.data === undefined || damaged.data.length === 0) return null;
  const tables = [...Map.groupBy(damaged.data, ({ table }) => table.replaceAll('_', ' '))].map(
    ([table, rows]) => `${rows.length} in ${table}`,
  );
  return (
    <div className={layout.notice} role="status">
      <p>
        <b>Something in the database cannot be read</b> and is passed over: {tables.join(', ')}. Nothing of it was changed or deleted.
      </p>
      <p>Next: make an archive, so that it is kept as it is; then restore the newest daily copy from before.</p>
    </div>
  );
}
