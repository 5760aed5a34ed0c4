import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { type SurveyColumnKey, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import type { ShelfFood } from './shelf.ts';
import type { Workbench } from './workbench.ts';

export interface FoodsToJudge {
  readonly foods: readonly ShelfFood[];
  /** How many labels have their estimate by now; null where none is wanted. */
  readonly estimating: { readonly done: number; readonly of: number } | null;
}

/**
 * The foods of a category (of the whole shelf when missing), ready to be judged: where their estimated minerals are wanted, what is not
 * estimated yet is begun, and the foods carry what is there so far.
 */
export async function foodsToJudge(
  { shelf, minerals }: Pick<Workbench, 'shelf' | 'minerals'>,
  category: string | undefined,
  useEstimates: boolean,
): Promise<FoodsToJudge> {
  const estimating = useEstimates ? await minerals.want((await shelf.foods(category)).map(({ label }) => label)) : null;
  return { foods: await shelf.foods(category), estimating };
}

/** Whether a yardstick judges, or a column shows, minerals that labels seldom print. */
export function wantsEstimates(yardstick: Yardstick, switchedOn: readonly string[], columns: readonly SurveyColumnKey[] = []): boolean {
  return (
    columns.some(key => surveyColumns[key].nutrients.some(one => one === 'phosphorusMg' || one === 'potassiumMg')) ||
    testsJudged(yardstick, switchedOn).some(({ useEstimates }) => useEstimates)
  );
}
