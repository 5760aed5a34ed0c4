import type { Amounts, ReadLabel } from '#core/label/label.ts';
import { per100G, per100Ml } from '#core/label/serving/per100G.ts';
import type { PlateFood, Portion } from '#core/plate/plate.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import type { Total } from '#core/quantity/amount.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { referencePortion } from './referenceAmount.ts';
import { addAmounts, addHelping, nothing, type Served } from './served.ts';
import type { Test } from './yardstick.ts';

/** The amounts that a test is judged on. */
export interface OnBasis {
  /** As it reads in a sentence: "on the plate", "per 50 g". */
  readonly words: string;
  /** How many foods are summed. */
  readonly foods: number;
  /** The words that the label of the surveyed food prints for a figure that stands for a range. */
  readonly printedAs: (nutrient: Nutrient) => readonly string[];
  readonly total: (nutrient: Nutrient, useEstimates: boolean) => Total;
}

/** A basis that does not exist for this food; one clause says why. */
export interface NoBasis {
  readonly cannotTell: string;
}

function printedBy({ asPrinted }: ReadLabel, nutrient: Nutrient): readonly string[] {
  const words = asPrinted[nutrient];
  return words === undefined ? [] : [words];
}

/** Where a portion or a companion can change the outcome. */
export function dependsOnPlate({ basis }: Pick<Test, 'basis'>): boolean {
  return basis === 'as-eaten' || basis === 'on-plate';
}

/**
 * The bases a test is judged on; the worst outcome counts. More than one where a claim is judged twice (reference
 * amount and 50 g) or where the surveyed food is a mix and the test is on the label alone.
 */
export function basesOf(test: Pick<Test, 'basis' | 'claimRule' | 'below'>, served: Served): readonly (OnBasis | NoBasis)[] {
  const { surveyed, companions } = served;
  switch (test.basis) {
    case 'on-plate':
      return [
        {
          words: 'on the plate',
          foods: surveyed.length + companions.parts.length,
          printedAs: nutrient => surveyed.flatMap(({ part }) => printedBy(part.food.label, nutrient)),
          total: (nutrient, useEstimates) =>
            surveyed.reduce((sum, one) => addHelping(sum, one, nutrient, useEstimates), companions.total(nutrient, useEstimates)),
        },
      ];
    case 'as-eaten':
      return [
        {
          words: 'as eaten',
          foods: surveyed.length,
          printedAs: nutrient => surveyed.flatMap(({ part }) => printedBy(part.food.label, nutrient)),
          total: (nutrient, useEstimates) => surveyed.reduce((sum, one) => addHelping(sum, one, nutrient, useEstimates), nothing),
        },
      ];
    case 'per-day':
      return [{ cannotTell: 'a day is judged on a menu, and this is one plate' }];
    default:
      return surveyed.flatMap(({ part }) => labelBases(test, part.food));
  }
}

function labelBases(test: Pick<Test, 'basis' | 'claimRule' | 'below'>, food: PlateFood): readonly (OnBasis | NoBasis)[] {
  switch (test.basis) {
    case 'per-serving':
      return [perPortion(food, { servings: 1 }, 'per serving')];
    case 'per-100-ml':
      return [per100MlOf(food)];
    case 'per-100-g':
      return [per100GOf(food)];
    default:
      return perReferenceAmount(test, food);
  }
}

/**
 * 21 CFR 101.61(b): a claim is judged per reference amount, when that is small per 50 g as well, and for meals and main
 * dishes per 100 g. "Free" knows neither: it is strictly under 5 mg per reference amount, per serving for meals (b)(1).
 */
function perReferenceAmount(test: Pick<Test, 'claimRule' | 'below'>, food: PlateFood): readonly (OnBasis | NoBasis)[] {
  const reference = referencePortion(food.label.printed.referenceAmount);
  if (reference === undefined) return [{ cannotTell: `no reference amount is known for ${food.name}` }];
  const claim = test.claimRule === 'us-sodium-claim';
  if (claim && reference.mealOrMainDish) {
    return [test.below === undefined ? per100GOf(food) : perPortion(food, { servings: 1 }, 'per serving')];
  }
  if (reference.portion === undefined) return [{ cannotTell: `no reference amount is known for ${food.name}` }];
  const perReference = perPortion(food, reference.portion, 'per reference amount');
  return claim && reference.small && test.below === undefined
    ? [perReference, perPortion(food, { grams: 50 }, 'per 50 g')]
    : [perReference];
}

function perPortion(food: PlateFood, portion: Portion, words: string): OnBasis {
  const factor = portionFactor(portion, food);
  const { label, name } = food;
  return {
    words,
    foods: 1,
    printedAs: nutrient => printedBy(label, nutrient),
    total: (nutrient, useEstimates) => addAmounts(nothing, name, label.amounts, factor, nutrient, useEstimates),
  };
}

/** By the label's own mass, whose rounding widens the range; else by a density or a mass that somebody has measured. */
function per100GOf(food: PlateFood): OnBasis {
  return food.label.amountsFor.grams ? ofLabel(food, per100G(food.label), 'per 100 g') : perPortion(food, { grams: 100 }, 'per 100 g');
}

function per100MlOf(food: PlateFood): OnBasis {
  return food.label.amountsFor.milliliters
    ? ofLabel(food, per100Ml(food.label), 'per 100 mL')
    : perPortion(food, { milliliters: 100 }, 'per 100 mL');
}

function ofLabel({ label, name }: PlateFood, amounts: Amounts, words: string): OnBasis {
  return {
    words,
    foods: 1,
    printedAs: nutrient => printedBy(label, nutrient),
    total: (nutrient, useEstimates) => addAmounts(nothing, name, amounts, 1, nutrient, useEstimates),
  };
}
