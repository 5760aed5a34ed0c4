import { recordOf } from '#core/json/recordOf.ts';
import { type Nutrient, nutrientKeys, nutrients, type UsPrintRule } from '#core/quantity/nutrients.ts';

/** How a US panel rounds each nutrient. */
export const usPrintRule: Readonly<Record<Nutrient, UsPrintRule>> = recordOf(nutrientKeys, key => nutrients[key].usPrint);

/** True for vitamins and minerals, whose %DV goes in steps of 2, 5 and 10 and whose amounts under 2 % may print as 0. */
export function isVitaminOrMineral(nutrient: Nutrient): boolean {
  const rule = usPrintRule[nutrient];
  return rule === 'tenth' || rule === 'ten';
}

/** Below this a vitamin or mineral may print as zero (21 CFR 101.9(c)(8)(iii)): 94 mg of potassium. */
export function twoPercentOfDailyValue(nutrient: Nutrient): number {
  return ((nutrients[nutrient].dailyValue ?? 0) * 2) / 100;
}
