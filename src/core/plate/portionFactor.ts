import { type UnknownAmount, unknown } from '#core/quantity/amount.ts';
import { gramsOfMeasure, millilitersOfMeasure, sameMeasure } from './measureName.ts';
import type { PlateFood, Portion } from './plate.ts';

/**
 * How many times `label.amounts` a portion is. A label for "4 slices (56 g)" and a portion of 2 slices or 28 g: 0.5.
 *
 * The declared serving is the basis (21 CFR 101.9(g)(7)); the rounding of its mass does not widen a portion.
 * Unknown, with the reason, when the label and what is known of the food do not tell it: never a guess.
 */
export function portionFactor(portion: Portion, food: PlateFood): number | UnknownAmount {
  if ('servings' in portion) {
    const { servings } = food.label.amountsFor;
    return servings ? portion.servings / servings : unknown('no-serving-mass');
  }
  if ('grams' in portion) return factorOfGrams(portion.grams, food);
  if ('milliliters' in portion) return factorOfMilliliters(portion.milliliters, food);
  return factorOfMeasure(portion.measure, portion.count, food);
}

/** Grams of a portion, where label, density or measured mass tell them. */
export function portionGrams(portion: Portion, food: PlateFood): number | undefined {
  if ('grams' in portion) return portion.grams;
  const factor = portionFactor(portion, food);
  const grams = labelGrams(food);
  return typeof factor === 'number' && grams ? factor * grams : undefined;
}

/** Millilitres of a portion, where the label, its household measure or a density tell them. */
export function portionMilliliters(portion: Portion, food: PlateFood): number | undefined {
  if ('milliliters' in portion) return portion.milliliters;
  const factor = portionFactor(portion, food);
  const milliliters = labelMilliliters(food);
  return typeof factor === 'number' && milliliters ? factor * milliliters : undefined;
}

function factorOfGrams(grams: number, food: PlateFood): number | UnknownAmount {
  const ofLabel = labelGrams(food);
  if (ofLabel) return grams / ofLabel;
  return unknown(food.label.amountsFor.milliliters ? 'no-density' : 'no-serving-mass');
}

function factorOfMilliliters(milliliters: number, food: PlateFood): number | UnknownAmount {
  const ofLabel = labelMilliliters(food);
  if (ofLabel) return milliliters / ofLabel;
  return unknown(labelGrams(food) ? 'no-density' : 'no-serving-mass');
}

function factorOfMeasure(measure: string, count: number, food: PlateFood): number | UnknownAmount {
  const { household } = food.label.amountsFor;
  if (household?.count && sameMeasure(household.measure, measure)) return count / household.count;
  const grams = measuredGrams(measure, food) ?? gramsOfMeasure(measure);
  if (grams !== undefined) return factorOfGrams(grams * count, food);
  const milliliters = millilitersOfMeasure(measure);
  if (milliliters !== undefined) return factorOfMilliliters(milliliters * count, food);
  return unknown('no-measure-mass');
}

function labelGrams(food: PlateFood): number | undefined {
  const { grams, milliliters, household } = food.label.amountsFor;
  if (grams) return grams;
  if (milliliters && food.densityGPerMl) return milliliters * food.densityGPerMl;
  if (!household) return undefined;
  const perMeasure = measuredGrams(household.measure, food) ?? gramsOfMeasure(household.measure);
  return perMeasure === undefined ? undefined : perMeasure * household.count;
}

function labelMilliliters(food: PlateFood): number | undefined {
  const { grams, milliliters, household } = food.label.amountsFor;
  if (milliliters) return milliliters;
  const perMeasure = household && millilitersOfMeasure(household.measure);
  if (household && perMeasure) return perMeasure * household.count;
  return grams && food.densityGPerMl ? grams / food.densityGPerMl : undefined;
}

function measuredGrams(measure: string, food: PlateFood): number | undefined {
  for (const [name, grams] of Object.entries(food.gramsPerMeasure ?? {})) {
    if (sameMeasure(name, measure)) return grams;
  }
  return undefined;
}
