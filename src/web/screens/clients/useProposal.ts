import { skipToken, useQuery } from '@tanstack/react-query';
import type { AssessmentJson } from '#core/client/assessment/assessment.ts';
import { answer, api } from '../../api.ts';

/** What an assessment would propose while it is typed. Client data stays in memory: the answer is forgotten with the form. */
export function useProposal(assessment: AssessmentJson | undefined) {
  return useQuery({
    queryKey: ['propose', assessment],
    queryFn: assessment === undefined ? skipToken : () => answer(api.clients.propose.$post({ json: { assessment } })),
    placeholderData: before => before,
    gcTime: 0,
  });
}
