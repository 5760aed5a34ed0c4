import { type Interval, interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';

/** Whether a nutrient was added to the food, from any source, or is there by nature. */
export type NutrientOrigin = 'added' | 'natural';

/**
 * What a US food may truly hold when it declares an amount: 21 CFR 101.9(g)(3) to (g)(6), twelve units tested as one. It is
 * far wider than rounding and is never part of a range on screens. Sodium 140 mg may be up to 168 mg; natural potassium
 * 470 mg may be 376 mg and has no upper limit, added potassium may not be less than 470 mg. Undefined for alcohol and water.
 */
export function usComplianceRange(nutrient: Nutrient, declared: number, origin: NutrientOrigin): Interval | undefined {
  switch (nutrient) {
    case 'energyKcal':
    case 'fatG':
    case 'saturatedFatG':
    case 'transFatG':
    case 'cholesterolMg':
    case 'sodiumMg':
    case 'totalSugarsG':
    case 'addedSugarsG':
      return interval(0, declared * 1.2);
    case 'alcoholG':
    case 'waterMl':
      return undefined;
    case 'carbohydrateG':
    case 'sugarAlcoholG':
      return interval(declared * 0.8, Number.POSITIVE_INFINITY);
    default:
      return interval(origin === 'added' ? declared : declared * 0.8, Number.POSITIVE_INFINITY);
  }
}
