import { useMutation } from '@tanstack/react-query';
import { answer, api, type Client } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { decidedJson } from './typedDecision.ts';
import type { TypedMeals } from './typedMeals.ts';
import type { TypedPrescription } from './typedPrescription.ts';
import { useRefreshClient } from './useClient.ts';

/** Signing the proposal as a whole; what is signed is never changed. */
export function useSignActions(
  client: Client,
  { decisions, by, credentials }: TypedPrescription,
  acknowledgedChanges: boolean,
  forget: () => Promise<void>,
) {
  const { id, version, assessmentId, weight, targets = [] } = client;
  const refresh = useRefreshClient(id);
  const send = useMutation({
    mutationFn: () =>
      answer(
        api.clients[':id'].prescriptions.$post({
          param: { id },
          json: {
            version,
            assessmentId: assessmentId!,
            ...(weight === undefined ? {} : { weightBasis: weight.chosen }),
            by,
            credentials,
            targets: targets.map(({ item }) => decidedJson(item, decisions[item]!)),
            acknowledgedChanges,
          },
        }),
      ),
    onSuccess: async () => {
      await forget();
      await refresh();
    },
  });
  const sign: Action = { label: 'Sign the prescription', isBusy: send.isPending, run: () => send.mutate() };
  return { sign, fault: send.error };
}

/** Keeping which part of the day's targets each meal may take. */
export function useMealActions({ id, version }: Client, { meals }: TypedMeals, isWhole: boolean, forget: () => Promise<void>) {
  const refresh = useRefreshClient(id);
  const send = useMutation({
    mutationFn: () => {
      const pattern = meals.map(({ name, percent }) => ({ name, percent: Number(percent) }));
      return answer(api.clients[':id'].meals.$put({ param: { id }, json: { version, pattern } }));
    },
    onSuccess: async () => {
      await forget();
      await refresh();
    },
  });
  const keep: Action = { label: 'Keep this pattern', isPossible: isWhole, isBusy: send.isPending, run: () => send.mutate() };
  return { keep, fault: send.error };
}
