import { millilitersOfMeasure } from './measureName.ts';
import type { PlateFood, Portion } from './plate.ts';
import { portionFactor } from './portionFactor.ts';

/** Counts within this of a step are the step: binary dust of a division. */
const tolerance = 1e-9;

/** The steps a kitchen measures in, by the measure's name as labels are read: cups by quarters and thirds (21 CFR 101.9(b)(5)(i)), spoons by the halves and quarters that spoons have. */
const steps: ReadonlyMap<string, readonly number[]> = new Map([
  ['cup', [1 / 4, 1 / 3]],
  ['tablespoon', [1 / 2]],
  ['teaspoon', [1 / 4]],
  ['fluid ounce', [1 / 2]],
  ['ounce', [1 / 2]],
]);

const whole: readonly number[] = [1];

/** When a cup is too big a step, spoons do. */
const smallerMeasure: ReadonlyMap<string, string> = new Map([
  ['cup', 'tablespoon'],
  ['tablespoon', 'teaspoon'],
]);

/** The largest count up to `count` that a kitchen can measure: 0.7 cup is 2/3 cup, 2.8 slices are 2. */
function floorToSteps(count: number, measure: string): number {
  return Math.max(...(steps.get(measure) ?? whole).map(step => Math.floor(count / step + tolerance) * step));
}

function ceilToSteps(count: number, measure: string): number {
  return Math.min(...(steps.get(measure) ?? whole).map(step => Math.ceil(count / step - tolerance) * step));
}

/** The largest part of `count`, up to `most`, that a kitchen can measure and whose rest it can measure too; 0 when there is none. */
export function largestSplit(count: number, most: number, measure: string): number {
  let largest = 0;
  for (const step of steps.get(measure) ?? whole) {
    for (let part = Math.floor(most / step + tolerance) * step; part > largest; part -= step) {
      if (Math.abs(floorToSteps(count - part, measure) - (count - part)) < tolerance) largest = part;
    }
  }
  return largest;
}

/**
 * The largest portion up to `factor` times the label's amounts that can be told in whole slices, spoons or cups of
 * the label's own household measure: 0.7 of "4 slices" is 2 slices; a third of "1/2 cup" is 2 1/2 tablespoons.
 * Undefined when the label prints no household measure or even the smallest step is too much.
 */
export function largestInMeasures(food: PlateFood, factor: number): Portion | undefined {
  const { household } = food.label.amountsFor;
  if (!household) return undefined;
  let { measure } = household;
  let count = household.count * factor;
  for (;;) {
    const floored = floorToSteps(count, measure);
    if (floored > 0) return { measure, count: floored };
    const smaller = smallerMeasure.get(measure);
    if (smaller === undefined) return undefined;
    count *= (millilitersOfMeasure(measure) ?? 0) / (millilitersOfMeasure(smaller) ?? 1);
    measure = smaller;
  }
}

/** The smallest such portion of at least `factor`; 1.1 of "2 slices" is 3 slices. */
export function smallestInMeasures(food: PlateFood, factor: number): Portion | undefined {
  const { household } = food.label.amountsFor;
  if (!household) return undefined;
  return { measure: household.measure, count: ceilToSteps(household.count * factor, household.measure) };
}

/**
 * The largest portion up to `factor` by scale or jug: whole grams, else whole millilitres, else quarter servings.
 * 0.5 of "1 serving (55 g)" is 27 g.
 */
export function largestByScale(food: PlateFood, factor: number): Portion | undefined {
  return byScale(food, factor, amount => Math.floor(amount + tolerance));
}

/** The smallest portion of at least `factor` by scale or jug. */
export function smallestByScale(food: PlateFood, factor: number): Portion | undefined {
  return byScale(food, factor, amount => Math.ceil(amount - tolerance));
}

function byScale(food: PlateFood, factor: number, round: (amount: number) => number): Portion | undefined {
  const perGram = portionFactor({ grams: 1 }, food);
  if (typeof perGram === 'number') {
    const grams = round(factor / perGram);
    return grams > 0 ? { grams } : undefined;
  }
  const perMilliliter = portionFactor({ milliliters: 1 }, food);
  if (typeof perMilliliter === 'number') {
    const milliliters = round(factor / perMilliliter);
    return milliliters > 0 ? { milliliters } : undefined;
  }
  const quarters = round(factor * (food.label.amountsFor.servings ?? 0) * 4);
  return quarters > 0 ? { servings: quarters / 4 } : undefined;
}
