import type { Plate, PlateFood, Portion } from '#core/plate/plate.ts';
import { portionFactor, portionGrams, portionMilliliters } from '#core/plate/portionFactor.ts';
import { portionText } from '#core/plate/portionText.ts';
import { largestSplit } from '#core/plate/wholeMeasures.ts';
import { foodLoads, type LinearTest, sharesThatFit } from './linearTest.ts';
import { smallestShare } from './portionWays.ts';
import { helpingOf } from './served.ts';
import type { Candidate } from './wayIn.ts';

/**
 * Part of the portion replaced by an unsalted version, the whole staying as large as it was: by household measure where
 * both labels print the same one, by mass or volume, and half and half where that is enough.
 */
export function mixWays(
  food: PlateFood,
  unsalted: PlateFood,
  plate: Plate,
  tests: readonly LinearTest[],
  companions: readonly number[],
): readonly Candidate[] {
  const candidates = wholePortions(food, plate.portion).flatMap(whole => {
    const salted = foodLoads(tests, helpingOf({ food, portion: whole }));
    const replaced = foodLoads(tests, helpingOf({ food: unsalted, portion: whole }));
    const rules = tests.map(({ limit }, at) => ({
      variable: salted[at]! - replaced[at]!,
      fixed: companions[at]! + replaced[at]!,
      limit,
    }));
    const shares = sharesThatFit(rules, 1);
    if (shares === undefined) return [];
    const half = amountOf(whole) / 2;
    const isHalfEnough = shares.least <= 1 / 2 && shares.most >= 1 / 2 && (!('measure' in whole) || splitAt(whole, half) === half);
    const amounts = new Set([...(isHalfEnough ? [half] : []), splitAt(whole, shares.most * amountOf(whole))]);
    return [...amounts].flatMap(amount => mix(food, unsalted, plate, whole, amount));
  });
  return candidates.filter(({ change }, at) => change !== 1 / 2 || candidates.findIndex(one => one.change === 1 / 2) === at);
}

function mix(food: PlateFood, unsalted: PlateFood, plate: Plate, whole: Portion, amount: number): readonly Candidate[] {
  const kept = amount / amountOf(whole);
  if (kept < smallestShare || kept >= 1) return [];
  const portion = withAmount(whole, amount);
  const rest = withAmount(whole, amountOf(whole) - amount);
  if (typeof portionFactor(portion, food) !== 'number' || typeof portionFactor(rest, unsalted) !== 'number') return [];
  const lead = kept === 1 / 2 ? 'half and half: ' : '';
  return [
    {
      kind: 'half-and-half',
      action: `${lead}${portionText(portion)} mixed with ${portionText(rest)} of ${unsalted.name}`,
      plate: { ...plate, portion },
      mixedWith: { food: unsalted, portion: rest },
      change: 1 - kept,
    },
  ];
}

/** The portion in the ways that can be split: the label's household measure, and mass or else volume. */
function wholePortions(food: PlateFood, portion: Portion): readonly Portion[] {
  const { household } = food.label.amountsFor;
  const factor = portionFactor(portion, food);
  if (typeof factor !== 'number') return [];
  const grams = portionGrams(portion, food);
  const milliliters = portionMilliliters(portion, food);
  return [
    ...(household ? [{ measure: household.measure, count: household.count * factor }] : []),
    ...(grams !== undefined ? [{ grams }] : milliliters !== undefined ? [{ milliliters }] : []),
  ];
}

function amountOf(portion: Portion): number {
  if ('grams' in portion) return portion.grams;
  if ('milliliters' in portion) return portion.milliliters;
  return 'servings' in portion ? portion.servings : portion.count;
}

function withAmount(portion: Portion, amount: number): Portion {
  if ('grams' in portion) return { grams: amount };
  if ('milliliters' in portion) return { milliliters: amount };
  return 'servings' in portion ? { servings: amount } : { measure: portion.measure, count: amount };
}

/** The largest amount up to `most` that can be measured, and what is left of the whole as well; 0 when there is none. */
function splitAt(whole: Portion, most: number): number {
  return 'measure' in whole ? largestSplit(whole.count, most, whole.measure) : Math.floor(most + 1e-9);
}
