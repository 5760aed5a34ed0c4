import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';

/**
 * Which paragraph of 21 CFR 101.9(c) says how a US panel rounds a nutrient.
 * - `energy` (c)(1), `fat` (c)(2), `cholesterol` (c)(3), `sodium` (c)(4), `gram` (c)(6) and (c)(7)
 * - `tenth`, `ten`: vitamins and minerals, (c)(8)(iii). The law gives no increment; FDA's guidance on quantitative
 *   amounts does: 0.1 where the Daily Value is under 25, 10 where it is 250 or more (the latter from memory).
 * - `none`: no line on a US panel.
 */
export type UsPrintRule = 'energy' | 'fat' | 'cholesterol' | 'sodium' | 'gram' | 'tenth' | 'ten' | 'none';

export const usPrintRule: Readonly<Record<Nutrient, UsPrintRule>> = {
  energyKcal: 'energy',
  fatG: 'fat',
  saturatedFatG: 'fat',
  transFatG: 'fat',
  cholesterolMg: 'cholesterol',
  sodiumMg: 'sodium',
  carbohydrateG: 'gram',
  fiberG: 'gram',
  totalSugarsG: 'gram',
  addedSugarsG: 'gram',
  sugarAlcoholG: 'gram',
  alcoholG: 'none',
  proteinG: 'gram',
  waterMl: 'none',
  vitaminDMcg: 'tenth',
  calciumMg: 'ten',
  ironMg: 'tenth',
  potassiumMg: 'ten',
  phosphorusMg: 'ten',
  magnesiumMg: 'ten',
};

/** True for vitamins and minerals, whose %DV goes in steps of 2, 5 and 10 and whose amounts under 2 % may print as 0. */
export function isVitaminOrMineral(nutrient: Nutrient): boolean {
  const rule = usPrintRule[nutrient];
  return rule === 'tenth' || rule === 'ten';
}

/** Below this a vitamin or mineral may print as zero (21 CFR 101.9(c)(8)(iii)): 94 mg of potassium. */
export function twoPercentOfDailyValue(nutrient: Nutrient): number {
  return ((nutrients[nutrient].dailyValue ?? 0) * 2) / 100;
}
