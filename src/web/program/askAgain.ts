import type { QueryClient } from '@tanstack/react-query';
import { thePresence } from '../lock/lockPresence.ts';

/** The program is heard again: what could not be read meanwhile is asked again, and what it serves now is looked at. */
export function askAgainWhenHeard(queries: QueryClient): void {
  const presence = thePresence();
  let wasHeard = presence.now().isHeard;
  presence.subscribe(() => {
    const { isHeard } = presence.now();
    if (isHeard && !wasHeard)
      void queries.invalidateQueries({ predicate: ({ state, queryKey }) => state.status === 'error' || queryKey[0] === 'workspace' });
    wasHeard = isHeard;
  });
}
