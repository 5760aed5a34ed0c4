import type { PlateFood } from '#core/plate/plate.ts';
import type { JudgeInput } from '#core/yardstick/judgePlate.ts';
import type { Shelf } from '#core/yardstick/wayIn.ts';
import { additiveInShort } from '../additiveInShort.ts';
import { judgeShelf, tellable } from '../judgeShelf.ts';

/** Reasons, classes, additives and ways in of some foods of a survey. */
export function surveyReasons(question: JudgeInput, foods: readonly PlateFood[], shelf: Shelf) {
  return judgeShelf({ ...question, foods, ways: { shelf, keep: tellable } }).foods.map(({ food, verdict, waysIn }) => ({
    foodId: food.id,
    why: verdict.why,
    tests: verdict.tests.map(({ testId, verdict: word, why }) => ({ testId, verdict: word, why })),
    classes: verdict.classes.map(({ name, why }) => ({ name, why })),
    additives: food.label.additives.map(additiveInShort),
    waysIn: waysIn?.ways.map(({ kind, what }) => ({ kind, what })) ?? [],
    ...(waysIn?.none === undefined ? {} : { noWayIn: waysIn.none }),
  }));
}
