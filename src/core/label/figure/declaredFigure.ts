import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { nearest } from '#core/quantity/rounding.ts';
import type { PrintedFigure } from '../label.ts';
import { isVitaminOrMineral, usPrintRule } from './usPrintRule.ts';

/**
 * What a US panel prints for a true amount per serving, in the nutrient's unit, when the firm uses every zero and every
 * "less than" that 21 CFR 101.9(c) allows. 142 mg of sodium prints as 140, 163 mg as 160; 0.7 g of fiber as
 * "less than 1 g"; 3 mg of cholesterol as "less than 5 mg". Alcohol and water have no line on a US panel: tenths and ones.
 *
 * @throws RangeError when the amount is negative or not finite.
 */
export function usDeclaredFigure(nutrient: Nutrient, amount: number): PrintedFigure {
  refuseImpossible(amount);
  switch (usPrintRule[nutrient]) {
    case 'energy':
      if (amount < 5) return 0;
      return amount <= 50 ? nearest(amount, 5) : nearest(amount, 10);
    case 'fat':
      if (amount < 0.5) return 0;
      return amount < 5 ? nearest(amount, 0.5) : nearest(amount, 1);
    case 'cholesterol':
      if (amount < 2) return 0;
      return amount <= 5 ? 'less than 5 mg' : nearest(amount, 5);
    case 'sodium':
      if (amount < 5) return 0;
      return amount <= 140 ? nearest(amount, 5) : nearest(amount, 10);
    case 'gram':
      if (amount < 0.5) return 0;
      return amount < 1 ? 'less than 1 g' : nearest(amount, 1);
    case 'ten':
      return nearest(amount, 10);
    case 'tenth':
      return nearest(amount, 0.1);
    case 'none':
      return nutrient === 'alcoholG' ? nearest(amount, 0.1) : nearest(amount, 1);
  }
}

/**
 * The %DV a US panel prints for an amount per serving; undefined where the nutrient has no Daily Value. Fat, sodium,
 * carbohydrate and the like go to the nearest 1 % (21 CFR 101.9(d)(7)(ii)); vitamins and minerals under 2 % print 0, then
 * steps of 2 up to 10 %, of 5 up to 50 %, of 10 above (101.9(c)(8)(iii)). 235 mg of potassium is 5.0 % and prints as 6.
 *
 * @throws RangeError when the amount is negative or not finite.
 */
export function usDeclaredDailyValuePercent(nutrient: Nutrient, amount: number): number | undefined {
  refuseImpossible(amount);
  const { dailyValue } = nutrients[nutrient];
  if (dailyValue === null) return undefined;
  const percent = (amount / dailyValue) * 100;
  if (!isVitaminOrMineral(nutrient)) return nearest(percent, 1);
  if (percent < 2) return 0;
  if (percent <= 10) return nearest(percent, 2);
  return percent <= 50 ? nearest(percent, 5) : nearest(percent, 10);
}

function refuseImpossible(amount: number): void {
  if (!(amount >= 0 && amount < Number.POSITIVE_INFINITY)) throw new RangeError(`not an amount: ${amount}`);
}
