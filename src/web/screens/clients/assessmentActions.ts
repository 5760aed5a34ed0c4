import { useMutation } from '@tanstack/react-query';
import type { AssessmentJson, ResultsJson } from '#core/client/assessment/assessment.ts';
import { answer, api, type Client } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { useRefreshClient } from './useClient.ts';

/** How a form is left: what was kept of it half typed is forgotten, and it closes. */
export interface Leaving {
  readonly forget: () => Promise<void>;
  readonly onDone: () => void;
}

/** Keeping an assessment, or leaving its form. Undefined while something is missing: it is named beside the button, and nothing is sent. */
export function useAssessmentActions(
  { id, version }: Client,
  assessment: AssessmentJson | undefined,
  leaving: Leaving,
  /** The assessment that it takes the place of. */
  corrects?: string,
) {
  const refresh = useRefreshClient(id);
  const send = useMutation({
    mutationFn: (ready: AssessmentJson) =>
      answer(
        api.clients[':id'].assessments.$post({
          param: { id },
          json: { version, assessment: ready, ...(corrects === undefined ? {} : { corrects }) },
        }),
      ),
    onSuccess: async () => {
      await leave(leaving);
      await refresh();
    },
  });
  const keep: Action = {
    label: corrects === undefined ? 'Keep the assessment' : 'Keep the correction',
    shortcut: 'Control+S',
    isBusy: send.isPending,
    run: () => assessment !== undefined && send.mutate(assessment),
  };
  return { keep, cancel: cancelling(leaving), fault: send.error };
}

/** Keeping results that came in since the newest assessment, or leaving their form. */
export function useResultsActions({ id, version }: Client, { labs, weighings }: ResultsJson, leaving: Leaving) {
  const refresh = useRefreshClient(id);
  const send = useMutation({
    mutationFn: () =>
      answer(api.clients[':id'].results.$post({ param: { id }, json: { version, labs: [...labs], weighings: [...weighings] } })),
    onSuccess: async () => {
      await leave(leaving);
      await refresh();
    },
  });
  const keep: Action = {
    label: 'Keep the results',
    shortcut: 'Control+S',
    isPossible: labs.length + weighings.length > 0,
    isBusy: send.isPending,
    run: () => send.mutate(),
  };
  return { keep, cancel: cancelling(leaving), fault: send.error };
}

async function leave({ forget, onDone }: Leaving): Promise<void> {
  await forget();
  onDone();
}

function cancelling(leaving: Leaving): Action {
  return { label: 'Cancel', run: () => void leave(leaving) };
}
