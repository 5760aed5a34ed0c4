import type { Plate, PlateFood, Portion } from '#core/plate/plate.ts';
import { portionedAmount } from '#core/plate/plateAmounts.ts';
import { portionFactor, portionGrams, portionMilliliters } from '#core/plate/portionFactor.ts';
import { scalePortion } from '#core/plate/scalePortion.ts';
import { largestByScale, largestInMeasures } from '#core/plate/wholeMeasures.ts';
import { judgedRange } from '#core/quantity/amount.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import { largestShareThatFits } from '#core/yardstick/waysIn.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { figure } from './words/numbers.ts';
import type { Words } from './words/words.ts';

/** A day holds at most this many of the plate's portions, each with its companions: more is no longer a varied day (own decision). */
const mostInADay = 2;

/**
 * The most of a food in a day: the largest whole slices, cups or spoons (else grams) up to the closed form's share of two plates under
 * the day's yardstick, the companions counted twice. A food that fits a meal fits a day once: never less than the plate's portion.
 * Undefined where no portion fits the day.
 */
export function dayPortion(food: PlateFood, plate: Plate, yardstick: Yardstick): Portion | undefined {
  const factor = portionFactor(plate.portion, food);
  if (typeof factor !== 'number') return undefined;
  const share = largestShareThatFits({ food, plate: platesInADay(plate), yardstick }) * mostInADay;
  const portion = largestInMeasures(food, factor * share) ?? largestByScale(food, factor * share);
  const found = portion && portionFactor(portion, food);
  if (portion !== undefined && typeof found === 'number' && found >= factor) return portion;
  return judgePlate({ food, plate, yardstick }).verdict === 'fits' ? plate.portion : undefined;
}

/**
 * The plate as often as a day may hold it.
 *
 * @internal
 */
export function platesInADay(plate: Plate): Plate {
  return {
    ...plate,
    portion: scalePortion(plate.portion, mostInADay),
    companions: plate.companions.map(one => ({ ...one, portion: scalePortion(one.portion, mostInADay) })),
  };
}

/** A portion as readers measure it, with its grams or milliliters: "4 slices (56 g)", "1 taza (245 g)". */
export function portionWords(words: Words, food: PlateFood, portion: Portion): string {
  const counted = inHouseholdMeasure(food, portion);
  const text = words.portion(counted);
  if ('grams' in counted || 'milliliters' in counted) return text;
  const grams = portionGrams(portion, food);
  if (grams !== undefined) return `${text} (${words.portion({ grams })})`;
  const milliliters = portionMilliliters(portion, food);
  return milliliters === undefined ? text : `${text} (${words.portion({ milliliters })})`;
}

/** Servings in the label's own measure: 1 serving is 4 slices. */
export function inHouseholdMeasure(food: PlateFood, portion: Portion): Portion {
  const { household, servings } = food.label.amountsFor;
  if (!('servings' in portion) || household === undefined || !servings) return portion;
  return { measure: household.measure, count: (household.count * portion.servings) / servings };
}

/** The sodium of one portion: "180 mg", "up to 94 mg" where the label's figure stands for a range; undefined where it is not known. */
export function sodiumOf(words: Words, food: PlateFood, portion: Portion): string | undefined {
  const amount = portionedAmount(food.label.amounts.sodiumMg, portionFactor(portion, food));
  if (amount.kind === 'unknown') return undefined;
  const { lo, hi } = judgedRange(amount);
  if (lo === hi) return `${figure(hi, 0)} mg`;
  if (!Number.isFinite(hi)) return words.asked({ kind: 'at-least', figure: `${figure(Math.floor(lo), 0)} mg` });
  return words.asked({ kind: 'between', lo: figure(Math.floor(lo), 0), hi: `${figure(Math.ceil(hi), 0)} mg` });
}
