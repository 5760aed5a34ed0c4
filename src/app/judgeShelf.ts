import type { PlateFood } from '#core/plate/plate.ts';
import { type JudgeInput, prepareJudge, servedOn } from '#core/yardstick/judgePlate.ts';
import { companionTotals } from '#core/yardstick/served.ts';
import type { Shelf, WayIn, WaysIn } from '#core/yardstick/wayIn.ts';
import { prepareWaysIn } from '#core/yardstick/waysIn.ts';
import type { Verdict, VerdictWord } from '#core/yardstick/yardstick.ts';

/** Which ways in to look for, and what to keep of each: their plates and verdicts are many and large, and can be worked out again. */
export interface WaysWanted<Kept> {
  /** What a way in may borrow from: the foods for an unsalted version, the plates for another companion. */
  readonly shelf: Shelf;
  readonly keep: (ways: WaysIn) => Kept;
}

export interface JudgeShelfInput<Kept> extends JudgeInput {
  readonly foods: readonly PlateFood[];
  /** None are looked for when missing; for foods that are over or nearly alone. */
  readonly ways?: WaysWanted<Kept>;
}

export interface JudgedFood<Kept = never> {
  readonly food: PlateFood;
  readonly verdict: Verdict;
  /** For a food that is over or nearly, where ways in were asked for. */
  readonly waysIn?: Kept;
}

/** Foods judged: data alone. Each view (screen, table, CSV, JSON, guide, handout) puts it into words. */
export interface JudgedShelf<Kept = never> extends JudgeInput {
  readonly counts: Readonly<Record<VerdictWord, number>>;
  /** In the order they were given. */
  readonly foods: readonly JudgedFood<Kept>[];
}

/**
 * Judges foods on one plate by one yardstick: the one loop behind every survey, guide, handout and client's list. Estimated minerals
 * are used where a test says so and the foods carry them (`foodsToJudge`). For 66 slices on a sandwich: 66 verdicts and their counts.
 */
export function judgeShelf<Kept = never>(
  { foods, ways, ...question }: JudgeShelfInput<Kept>,
  onProgress?: (done: number, total: number) => void,
): JudgedShelf<Kept> {
  const judge = prepareJudge(question);
  const findWaysIn = ways && prepareWaysIn({ ...question, shelf: ways.shelf });
  const companions = companionTotals(question.plate.companions);
  const counts: Record<VerdictWord, number> = { fits: 0, nearly: 0, over: 0, "can't tell": 0 };
  const judged = foods.map((food, index): JudgedFood<Kept> => {
    const verdict = judge(servedOn(question.plate, companions, food));
    counts[verdict.verdict] += 1;
    const waysIn = ways && findWaysIn && isOff(verdict) ? { waysIn: ways.keep(findWaysIn(food, verdict)) } : {};
    onProgress?.(index + 1, foods.length);
    return { food, verdict, ...waysIn };
  });
  return { ...question, counts, foods: judged };
}

/** Whether ways in are looked for: what fits needs none, and what cannot be told has none. */
export function isOff({ verdict }: Verdict): boolean {
  return verdict === 'over' || verdict === 'nearly';
}

/** What a table, a CSV or a guide tells of a way in. */
export interface TellableWays {
  readonly ways: readonly Pick<WayIn, 'kind' | 'what' | 'totals'>[];
  /** Why there is none. */
  readonly none?: string;
}

export function tellable({ ways, none }: WaysIn): TellableWays {
  return { ways: ways.map(({ kind, what, totals }) => ({ kind, what, totals })), ...(none === undefined ? {} : { none }) };
}
