import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import { answer, api } from '../../api.ts';

/** One client as of today, by the weight basis that was picked. */
export function useClient(clientId: string) {
  const [pick, setPick] = useState<WeightBasisId>();
  const client = useQuery({
    queryKey: ['client', clientId, pick],
    queryFn: () => answer(api.clients[':id'].$get({ param: { id: clientId }, query: pick === undefined ? {} : { pick } })),
    placeholderData: before => before,
    gcTime: 0,
  });
  return { data: client.data, error: client.error, setPick };
}

/** What was read of a client, and the list of everyone, is old after a change. */
export function useRefreshClient(clientId: string): () => Promise<void> {
  const queries = useQueryClient();
  return async () => {
    await queries.invalidateQueries({ queryKey: ['client', clientId] });
    await queries.invalidateQueries({ queryKey: ['clients'] });
  };
}

/**
 * The version that a form names when it is saved: that of now while what it began with still stands, otherwise that which it was made from,
 * and then saving is refused. Results that came in while an assessment was typed would else be left out of it unseen.
 */
export function useVersionOf(version: number, begunFrom: string): number {
  const [begun] = useState({ version, begunFrom });
  return begun.begunFrom === begunFrom ? version : begun.version;
}
