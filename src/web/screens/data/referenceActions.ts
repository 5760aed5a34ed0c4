import { useMutation } from '@tanstack/react-query';
import { answer, api, Problem } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { useLongWork } from './longActions.ts';

/** The files of a dataset's folder that are read; the others stay where they are. */
const read =
  /^(?:food_des|nut_data|weight)\.txt$|^(?:food|nutrient|food_nutrient|food_portion|measure_unit|food_category|sr_legacy_food|foundation_food)\.csv$/i;
const mostBytes = 70 * 2 ** 20;

/** Brings the files of a composition table, or removes a table. `onDone` reads anew what is here. */
export function useReferenceActions(onDone: () => Promise<void>) {
  const bringing = useLongWork({
    work: async (given: readonly File[], { workId, init }) => {
      const known = given.filter(({ name }) => read.test(name));
      const files = known.length === 0 ? [...given] : known;
      if (files.reduce((sum, { size }) => sum + size, 0) > mostBytes) throw tooLarge;
      return answer(api.references.$post({ form: { files, workId } }, { init }));
    },
    onDone,
  });
  const removing = useMutation({
    mutationFn: (dataset: string) => answer(api.references[':dataset'].$delete({ param: { dataset } })),
    onSuccess: async () => {
      bringing.reset();
      await onDone();
    },
  });
  return {
    bringing,
    remove: (dataset: string, source: string): Action => ({
      label: 'Remove',
      about: `Remove ${source}`,
      isBusy: removing.isPending,
      run: () => removing.mutate(dataset),
    }),
    fault: bringing.fault ?? removing.error,
  };
}

const tooLarge = new Problem(
  'Too much at once',
  'The files are larger than 70 MB together.',
  'Run `platewright reference import FOLDER --out FILE` and choose the file that it writes; or choose the files of one dataset only.',
  'request-too-large',
);
