import { useQuery } from '@tanstack/react-query';
import { answer, api, type Proposal } from '../../api.ts';

/** What an assessment, as JSON, would propose while it is typed. Client data stays in memory: the answer is forgotten with the form. */
export function useProposal(json: string, enabled = true) {
  return useQuery({
    queryKey: ['propose', json],
    queryFn: () => answer<Proposal>(api.clients.propose.$post({ json: { assessment: JSON.parse(json) } })),
    placeholderData: before => before,
    enabled,
    gcTime: 0,
  });
}
