import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { byWhatIsTold, notToldIn, type SeldomPrinted } from '#core/yardstick/byLabel.ts';
import { asks, type ClientReason, clientReasons, forbids, type Offer } from '#core/yardstick/clientReason.ts';
import type { ClientBounds } from '#core/yardstick/clientYardstick.ts';
import { clientYardstick } from '#core/yardstick/clientYardstick.ts';
import { type UnsafeFood, unsafeFood } from '#core/yardstick/foodSafety.ts';
import { kinKeys } from '#core/yardstick/ingredientKin.ts';
import { largestShareThatFits } from '#core/yardstick/waysIn.ts';
import type { Verdict, Yardstick } from '#core/yardstick/yardstick.ts';
import { judgeShelf } from '../judgeShelf.ts';

/** What one client may eat: by the signed prescription, what is avoided, and whether the immune system is held down. */
export interface ForClient extends Pick<ClientBounds, 'targets' | 'avoidedFoods' | 'useEstimates'> {
  /** Those of `avoidedFoods` that are allergies. */
  readonly allergies: readonly string[];
  readonly isSuppressed: boolean;
  readonly meal: { readonly name: string; readonly percent: number };
  readonly plate: Plate;
}

/** A food, and the category by which some foods are not safe for everyone. */
export interface CategorizedFood {
  readonly food: PlateFood;
  readonly category?: string;
}

/** A food judged for one client. What forbids it stands in the place of any portion. */
export interface JudgedForClient {
  readonly food: PlateFood;
  readonly offer: Offer;
  /** The gravest first. */
  readonly reasons: readonly ClientReason[];
  /** Of the tests that the label can tell. */
  readonly verdict: Verdict;
  /** What the verdict is by: the client's yardstick without the minerals that are not told. */
  readonly yardstick: Yardstick;
  readonly dayYardstick: Yardstick;
  readonly notTold: readonly SeldomPrinted[];
  readonly unsafe?: UnsafeFood;
  /** Of the plate's portion, 0 where nothing is offered. The plate counts whole, what the food is eaten with too. */
  readonly shareOfMeal: number;
}

export interface JudgedForClientShelf {
  /** The meal's yardstick with all that is signed. */
  readonly yardstick: Yardstick;
  readonly dayYardstick: Yardstick;
  /** In the order they were given. */
  readonly foods: readonly JudgedForClient[];
}

/**
 * Judges foods for one client; screen and handout show what it says. An allergen, an avoided food or a ruled-out additive that the label names is never
 * offered, one that it leaves open is asked about first. A signed mineral that the label does not tell is judged by its additives, and named as not told.
 */
export function judgeForClient(foods: readonly CategorizedFood[], client: ForClient): JudgedForClientShelf {
  const { targets, avoidedFoods, allergies, useEstimates, isSuppressed, meal, plate } = client;
  const bounds = { targets, avoidedFoods, useEstimates };
  const yardstick = clientYardstick({ ...bounds, percent: meal.percent, meal: meal.name });
  const dayYardstick = clientYardstick({ ...bounds, percent: 100, meal: 'the day' });
  const allergic = new Set(allergies.flatMap(kinKeys));
  const told = judgedByWhatIsTold(foods, plate, yardstick);
  const judged = foods.map(({ food, category }, at): JudgedForClient => {
    const { notTold, verdict } = told[at]!;
    const [ofMeal, ofDay] = [byWhatIsTold(yardstick, notTold), byWhatIsTold(dayYardstick, notTold)];
    const unsafe = isSuppressed ? unsafeFood(food, category) : undefined;
    const unsafety = unsafe === undefined ? {} : { unsafe };
    const reasons = clientReasons({ yardstick: ofMeal, verdict, allergies: allergic, notTold, ...unsafety });
    const barred = reasons.some(forbids) ? 'never' : reasons.some(asks) ? 'ask' : undefined;
    const shareOfMeal = barred === undefined ? largestShareThatFits({ food, plate, yardstick: ofMeal }) : 0;
    return {
      food,
      offer: barred ?? (verdict.verdict === 'fits' ? 'portion' : shareOfMeal > 0 ? 'less' : 'none'),
      reasons,
      verdict,
      yardstick: ofMeal,
      dayYardstick: ofDay,
      notTold,
      ...unsafety,
      shareOfMeal,
    };
  });
  return { yardstick, dayYardstick, foods: judged };
}

interface Told {
  readonly notTold: readonly SeldomPrinted[];
  readonly verdict: Verdict;
}

/** Each food by all that is signed; where its label does not tell a mineral, once more by what it tells, foods alike in that together. */
function judgedByWhatIsTold(foods: readonly CategorizedFood[], plate: Plate, yardstick: Yardstick): readonly Told[] {
  const all = judgeShelf({ foods: foods.map(({ food }) => food), plate, yardstick }).foods;
  const told = all.map(({ verdict }): Told => ({ notTold: notToldIn(verdict), verdict }));
  const alike = Map.groupBy([...told.keys()], at => told[at]!.notTold.join());
  for (const places of alike.values()) {
    const { notTold } = told[places[0]!]!;
    if (notTold.length === 0) continue;
    const again = judgeShelf({ foods: places.map(at => foods[at]!.food), plate, yardstick: byWhatIsTold(yardstick, notTold) });
    for (const [index, at] of places.entries()) told[at] = { notTold, verdict: again.foods[index]!.verdict };
  }
  return told;
}
