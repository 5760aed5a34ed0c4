import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';

/** Who was erased in the last ten minutes, with the button that brings them back. */
export function Erased() {
  const queries = useQueryClient();
  const erased = useQuery({
    queryKey: ['clients', 'erased'],
    queryFn: () => answer(api.clients.erased.$get()),
    gcTime: 0,
    // What can no longer be brought back leaves the screen by itself.
    refetchInterval: 30_000,
  });
  const bringBack = useMutation({
    mutationFn: (id: string) => answer(api.clients[':id']['bring-back'].$post({ param: { id } })),
    onSettled: () => queries.invalidateQueries({ queryKey: ['clients'] }),
  });
  return (
    <>
      {erased.data?.map(({ id, name, until }) => (
        <div key={id} className={`${layout.notice} ${layout.row}`} role="status">
          <span>
            Erased: {name}. Until {new Date(until).toLocaleTimeString('en-US', { hour: 'numeric', minute: '2-digit' })}, or until client
            data is locked, that can be undone.
          </span>
          <button type="button" className={button.quiet} aria-label={`Bring ${name} back`} onClick={() => bringBack.mutate(id)}>
            Undo
          </button>
        </div>
      ))}
      <Told error={bringBack.error} />
    </>
  );
}
