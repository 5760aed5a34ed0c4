import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useBringBack } from './actions.ts';

/** Who was erased in the last ten minutes, with the button that brings them back. */
export function Erased() {
  const erased = useQuery({
    queryKey: ['clients', 'erased'],
    queryFn: () => answer(api.clients.erased.$get()),
    gcTime: 0,
    // What can no longer be brought back leaves the screen by itself.
    refetchInterval: 30_000,
  });
  const { bringBack, fault } = useBringBack();
  return (
    <>
      {erased.data?.map(({ id, name, until }) => (
        <div key={id} className={`${layout.notice} ${layout.row}`} role="status">
          <span>
            Erased: {name}. Until {new Date(until).toLocaleTimeString('en-US', { hour: 'numeric', minute: '2-digit' })}, or until client
            data is locked, that can be undone.
          </span>
          <ActionButton action={bringBack(id, name)} />
        </div>
      ))}
      <Told error={fault} />
    </>
  );
}
