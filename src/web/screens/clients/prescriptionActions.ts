import { useMutation } from '@tanstack/react-query';
import { answer, api, type Client } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import type { Typed } from '../../ui/form/typed.ts';
import { decidedJson, decisionFrom, type Target } from './typedDecision.ts';
import type { TypedMeals } from './typedMeals.ts';
import type { TypedPrescription } from './typedPrescription.ts';
import { useRefreshClient } from './useClient.ts';

/** Signing the proposal as a whole; what is signed is never changed. */
export function useSignActions(
  client: Client,
  { decisions, by, credentials }: TypedPrescription,
  acknowledgedChanges: boolean,
  forget: () => Promise<void>,
  /** Targets without a reason or a figure that they need: opened first, nothing is sent. */
  unwritten: { readonly count: number; readonly show: () => void },
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
  const sign: Action = {
    label: 'Sign the prescription',
    isBusy: send.isPending,
    run: () => (unwritten.count > 0 ? unwritten.show() : send.mutate()),
  };
  return { sign, fault: send.error };
}

export interface TakeActions {
  /** What is proposed today for one target. */
  readonly one: (item: string) => Action;
  /** For every line that stands as signed and is proposed otherwise; undefined where there is none. */
  readonly all: Action | undefined;
}

/** Taking over what is proposed today in the place of what stands as signed. */
export function useTakeActions(targets: readonly Target[], typed: Typed<TypedPrescription>): TakeActions {
  const { decisions } = typed.values;
  const take = (taken: readonly Target[]): void => {
    const next = taken.map(target => [target.item, decisionFrom('proposal', target, decisions[target.item]!)] as const);
    typed.set({ decisions: { ...decisions, ...Object.fromEntries(next) } });
  };
  const differing = targets.filter(({ item, differsSinceSigned }) => differsSinceSigned === true && decisions[item]?.isAsSigned === true);
  const all: Action = { label: `Take all ${differing.length}`, about: 'Take all that would change', run: () => take(differing) };
  return {
    one: item => ({
      label: 'take it',
      about: `take it: ${targets.find(one => one.item === item)?.title}`,
      run: () => take(targets.filter(one => one.item === item)),
    }),
    all: differing.length > 1 ? all : undefined,
  };
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
