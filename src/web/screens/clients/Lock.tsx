import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { thePresence, useLock } from '../../lock/lockPresence.ts';
import { Told } from '../../ui/Told.tsx';
import { LockedDoor } from './LockedDoor.tsx';
import { LockSettings } from './LockSettings.tsx';

/** The door before client data: asks for the passphrase while it is locked, and lets it be set, changed, taken off and locked. */
export function Lock({ onOpen }: { readonly onOpen: () => Promise<void> }) {
  const { status: heard } = useLock();
  // Asked once, where nothing was heard yet; from then on the program tells by itself.
  const asked = useQuery({
    queryKey: ['lock'],
    queryFn: async () => {
      const status = await answer(api.clients.lock.$get());
      thePresence().learn(status);
      return status;
    },
    enabled: heard === undefined,
    gcTime: 0,
  });
  const status = heard ?? asked.data;
  if (status === undefined) return <Told error={asked.error} />;
  return status.state === 'locked' ? (
    <LockedDoor status={status} onOpen={onOpen} />
  ) : (
    <LockSettings key={String(status.hasPassphrase)} hasPassphrase={status.hasPassphrase} idleMinutes={status.idleMinutes} />
  );
}
