import { marginOf } from '#app/survey/surveyForScreen.ts';
import type { ClientAim } from '#core/client/aims/clientAims.ts';
import { type HouseholdFluid, householdFluid } from '#core/client/prescription/householdFluid.ts';
import { dayPortion, portionWords } from '#core/handout/portions.ts';
import { wordsIn } from '#core/handout/words/inLanguage.ts';
import { fluidOnPlate } from '#core/plate/fluid.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import { largestByScale, largestInMeasures } from '#core/plate/wholeMeasures.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { aimRank } from '#core/yardstick/aimOrder.ts';
import { isBoundTest } from '#core/yardstick/boundTest.ts';
import { type ClientReason, reasonText } from '#core/yardstick/clientReason.ts';
import { decimalsOf, rangeText } from '#core/yardstick/figureText.ts';
import { addHelping, type CompanionTotals, helpingOf } from '#core/yardstick/served.ts';
import { settlingText, whatSettles } from '#core/yardstick/settles.ts';
import { largestShareThatFits } from '#core/yardstick/waysIn.ts';
import type { Verdict, Yardstick } from '#core/yardstick/yardstick.ts';
import type { ShelfFood } from '../shelf.ts';
import type { JudgedForClient } from './judgeForClient.ts';

/** What one food is put into words by. */
export interface FitsQuestion {
  readonly plate: Plate;
  /** What the food is eaten with, summed once for all the foods on the plate. */
  readonly companions: CompanionTotals;
  /** The meal's yardstick with all that is signed, also what this label does not tell. */
  readonly yardstick: Yardstick;
  readonly aims: readonly ClientAim[];
  readonly useEstimates: boolean;
  /** The day's fluid in cups, where one figure is signed. */
  readonly fluid: { readonly cups: HouseholdFluid; readonly isMost: boolean } | undefined;
  readonly shown: readonly Nutrient[];
}

export type FitsRow = ReturnType<typeof fitsRow>;

/** One food as a row says it, and what rows are sorted by; null where it is not known. */
export function fitsRow({ row, food }: ShelfFood, judged: JudgedForClient, question: FitsQuestion) {
  const { plate, yardstick: signed, aims, useEstimates, shown } = question;
  const { offer, reasons, verdict, yardstick, dayYardstick, notTold, unsafe, shareOfMeal } = judged;
  const isBarred = offer === 'never' || offer === 'ask';
  const [gravest] = reasons;
  const avoided = offer === 'never' && (gravest?.kind === 'allergen' || gravest?.kind === 'avoided') ? gravest.kind : undefined;
  const settling = offer !== 'never' && (offer === 'ask' || notTold.length > 0) ? whatSettles(food, plate, signed) : undefined;
  const fluid = fluidText(food, row.category, question);
  const portion = (most: () => string): string => (offer === 'never' ? 'none' : offer === 'ask' ? 'ask first' : most());
  return {
    foodId: row.id,
    name: row.name,
    ...(row.maker === undefined ? {} : { maker: row.maker }),
    ...(row.category === undefined ? {} : { category: row.category }),
    plate: plate.id,
    offer,
    // Raw sprouts keep every number, and are not for this client all the same.
    verdict: offer === 'never' ? ('over' as const) : verdict.verdict,
    ...(avoided === undefined ? {} : { avoided }),
    closeCall: verdict.closeCall,
    estimated: verdict.estimated,
    why: isBarred ? reasonText(gravest!) : marginOf(verdict, yardstick),
    // How to eat it is no word for what is not to be eaten.
    marks:
      offer === 'never'
        ? []
        : [
            ...(unsafe?.rule === 'heat' ? [`${unsafe.line.en}.`] : []),
            ...notTold.map(mineral =>
              verdict.verdict === 'fits' && offer !== 'ask'
                ? `Fits by what the label tells; ${mineral} not known.`
                : `${upper(mineral)} not known.`,
            ),
          ],
    ...(settling === undefined ? {} : { settles: settlingText(settling, food.name) }),
    ...(fluid === undefined ? {} : { fluid }),
    reasons: reasons.map(told),
    amounts: shown.map(nutrient => amountOnPlate(food, nutrient, question)),
    margin: isBarred ? null : relativeMargin(verdict, yardstick),
    rank: aimRank(aims, { food, plate, category: row.category, unsafe, useEstimates }),
    inMeal: portion(() => kitchenPortion(food, plate, shareOfMeal)),
    // As a handout says it; where not even the plate's portion fits a day, the part of it that does.
    inDay: portion(() => {
      const most = dayPortion(food, plate, dayYardstick);
      if (most !== undefined) return portionWords(wordsIn.en, food, most);
      return kitchenPortion(food, plate, largestShareThatFits({ food, plate, yardstick: dayYardstick }));
    }),
  };
}

/** The largest whole slices, cups or spoons (else grams) up to the closed form's share of the plate's portion: half of a cup is "1/2 cup (120 g)". */
function kitchenPortion(food: PlateFood, { portion }: Plate, share: number): string {
  if (share >= 1) return portionWords(wordsIn.en, food, portion);
  const factor = portionFactor(portion, food);
  if (typeof factor !== 'number' || share <= 0) return 'none';
  const most = largestInMeasures(food, factor * share) ?? largestByScale(food, factor * share);
  return most === undefined ? 'none' : portionWords(wordsIn.en, food, most);
}

/** What the whole plate holds, as a test compares it; a part that nobody knows is never counted as 0. */
function amountOnPlate(food: PlateFood, nutrient: Nutrient, { plate: { portion }, companions, useEstimates }: FitsQuestion) {
  const sum = addHelping(companions.total(nutrient, useEstimates), helpingOf({ food, portion }), nutrient, useEstimates);
  const { unit } = nutrients[nutrient];
  if (sum.missing.length > 0) {
    const known =
      sum.judged.lo > 0 ? ` (${rangeText({ lo: sum.judged.lo, hi: Number.POSITIVE_INFINITY }, unit, decimalsOf(nutrient))})` : '';
    return { text: `not known${known}`, sortBy: null };
  }
  return { text: rangeText(sum.judged, unit, decimalsOf(nutrient)), sortBy: Number.isFinite(sum.judged.hi) ? sum.judged.hi : null };
}

/** The smallest room under a bound as a part of the bound: 150 mg of 600 mg to spare is 0.25; below 0 is over. */
function relativeMargin({ tests: outcomes }: Verdict, { tests }: Yardstick): number | null {
  const parts = tests.filter(isBoundTest).flatMap(({ id }) => {
    const outcome = outcomes.find(({ testId }) => testId === id);
    return outcome?.margin === undefined || !outcome.bound ? [] : [outcome.margin / outcome.bound];
  });
  return parts.length === 0 ? null : Math.min(...parts);
}

function fluidText(food: PlateFood, category: string | undefined, { plate, fluid }: FitsQuestion): string | undefined {
  if (fluid === undefined) return undefined;
  const found = fluidOnPlate(plate, food, category);
  if (found.kind === 'none') return undefined;
  const cups = found.kind === 'fluid' ? householdFluid({ lo: found.milliliters, hi: found.milliliters }, 'at-least') : undefined;
  if (cups === undefined) return 'counts as fluid; how much is not known';
  const day = `${fluid.cups.cups} ${fluid.cups.isOneCup ? 'cup' : 'cups'}`;
  return fluid.isMost ? `counts as ${cups.cups} of ${day}` : `gives ${cups.cups} of the ${day} needed`;
}

function told(reason: ClientReason) {
  return {
    kind: reason.kind,
    ...('testId' in reason ? { testId: reason.testId } : {}),
    ...('kin' in reason ? { kin: reason.kin } : {}),
    ...('presence' in reason ? { presence: reason.presence } : {}),
    text: reasonText(reason),
  };
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
