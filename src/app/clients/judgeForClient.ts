import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { byWhatIsTold, notToldIn, type SeldomPrinted } from '#core/yardstick/byLabel.ts';
import { asks, type ClientReason, clientReasons, forbids, type Offer } from '#core/yardstick/clientReason.ts';
import type { ClientBounds } from '#core/yardstick/clientYardstick.ts';
import { clientYardstick } from '#core/yardstick/clientYardstick.ts';
import { type UnsafeFood, unsafeFood } from '#core/yardstick/foodSafety.ts';
import { kinKeys } from '#core/yardstick/ingredientKin.ts';
import { prepareJudge, servedOn } from '#core/yardstick/judgePlate.ts';
import { companionTotals } from '#core/yardstick/served.ts';
import { largestShareThatFits } from '#core/yardstick/waysIn.ts';
import type { Verdict, Yardstick } from '#core/yardstick/yardstick.ts';

/** What one client may eat: by the signed prescription, what is avoided, and whether the immune system is held down. */
export interface ForClient extends Pick<ClientBounds, 'targets' | 'avoidedFoods' | 'useEstimates'> {
  /** Those of `avoidedFoods` that are allergies. */
  readonly allergies: readonly string[];
  readonly isSuppressed: boolean;
  readonly meal: { readonly name: string; readonly percent: number };
  readonly plate: Plate;
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
  readonly shareOfDay: number;
}

export interface ClientJudge {
  /** The meal's yardstick with all that is signed. */
  readonly yardstick: Yardstick;
  readonly dayYardstick: Yardstick;
  readonly judge: (food: PlateFood, category?: string) => JudgedForClient;
}

/**
 * Judges foods for one client; screen and handout show what it says. An allergen, an avoided food or a ruled-out additive that the label names is never
 * offered, one that it leaves open is asked about first. A signed mineral that the label does not tell is judged by its additives, and named as not told.
 */
export function judgeForClient({ targets, avoidedFoods, allergies, useEstimates, isSuppressed, meal, plate }: ForClient): ClientJudge {
  const bounds = { targets, avoidedFoods, useEstimates };
  const yardstick = clientYardstick({ ...bounds, percent: meal.percent, meal: meal.name });
  const dayYardstick = clientYardstick({ ...bounds, percent: 100, meal: 'the day' });
  const allergic = new Set(allergies.flatMap(kinKeys));
  const companions = companionTotals(plate.companions);
  const judgeAll = prepareJudge({ yardstick });
  const byTold = new Map<string, ReturnType<typeof prepared>>();

  function prepared(notTold: readonly SeldomPrinted[]) {
    const [ofMeal, ofDay] = [byWhatIsTold(yardstick, notTold), byWhatIsTold(dayYardstick, notTold)];
    return { ofMeal, ofDay, judge: notTold.length === 0 ? judgeAll : prepareJudge({ yardstick: ofMeal }) };
  }

  return {
    yardstick,
    dayYardstick,
    judge: (food, category) => {
      const served = servedOn(plate, companions, food);
      const all = judgeAll(served);
      const notTold = notToldIn(all);
      const key = notTold.join();
      const told = byTold.get(key) ?? prepared(notTold);
      byTold.set(key, told);
      const verdict = notTold.length === 0 ? all : told.judge(served);
      const unsafe = isSuppressed ? unsafeFood(food, category) : undefined;
      const reasons = clientReasons({
        yardstick: told.ofMeal,
        verdict,
        allergies: allergic,
        notTold,
        ...(unsafe === undefined ? {} : { unsafe }),
      });
      const barred = reasons.some(forbids) ? 'never' : reasons.some(asks) ? 'ask' : undefined;
      const share = (by: Yardstick): number => (barred === undefined ? largestShareThatFits({ food, plate, yardstick: by }) : 0);
      const shareOfMeal = share(told.ofMeal);
      return {
        food,
        offer: barred ?? (verdict.verdict === 'fits' ? 'portion' : shareOfMeal > 0 ? 'less' : 'none'),
        reasons,
        verdict,
        yardstick: told.ofMeal,
        dayYardstick: told.ofDay,
        notTold,
        ...(unsafe === undefined ? {} : { unsafe }),
        shareOfMeal,
        shareOfDay: share(told.ofDay),
      };
    },
  };
}
