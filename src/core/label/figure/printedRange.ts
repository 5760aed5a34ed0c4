import { type Amount, type KnownAmount, unknown } from '#core/quantity/amount.ts';
import { exactly, hull, type Interval, intersect, interval, scale } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { Market } from '../label.ts';
import type { PanelKey } from '../panelKeys.ts';
import { caRange } from './caRange.ts';
import { agreement, type DailyValueBase, dailyValueOf, unroundedPercent } from './dailyValue.ts';
import { usDeclaredFigure } from './declaredFigure.ts';
import { euLessThanRange, euRange } from './euRange.ts';
import { type Figure, isNutrientKey } from './figure.ts';
import { notSignificantRange } from './notSignificant.ts';
import { isVitaminOrMineral } from './usPrintRule.ts';
import { around, sodiumRange, usRange } from './usRange.ts';

/** Which Daily Value the percents of a panel are of, as far as its own lines with amount and percent tell. */
export type PanelBase = DailyValueBase | 'unclear';

/**
 * The true range that a printed figure stands for, by the rule that allows the print, in the key's unit.
 *
 * The printed number stays the compared number where the law lets it stand for itself: 140 mg of sodium, a "0 g" of fat.
 * It does not for a mineral printed as zero (potassium 0 mg is 0 up to 94 mg), "<1 g", a %DV alone, and "not a significant
 * source": the whole range is judged then. An amount with a %DV that no rounding explains is unknown: a contradiction; a
 * %DV that is one step off leaves the amount as it is. The audit reports both.
 */
export function printedRange(key: PanelKey, figure: Figure, market: Market, base: PanelBase = 'current'): Amount {
  if (figure.notSignificant) return isNutrientKey(key) ? wide(notSignificantRange(key)) : unknown('not-a-number');
  const own = ownAmount(key, figure, market, base);
  if (!isNutrientKey(key)) return own ?? unknown('not-printed');
  if (own === undefined) return fromPercentAlone(key, figure, market, base);
  return figure.percent === undefined ? own : withPercent(key, own, figure, figure.percent, market);
}

/** What the printed amount stands for, whatever %DV stands beside it; undefined where only a %DV is printed. */
export function ownAmount(key: PanelKey, figure: Figure, market: Market, base: PanelBase): KnownAmount | undefined {
  const { value, place = 1 } = figure;
  if (value === undefined) return undefined;
  if (figure.lessThan) return wide(lessThanRange(key, value, market));
  const range = marketRange(key, value, place, market, base);
  const whole = figure.converted ? hull(range, around(value, place / 2)) : range;
  const standsForItself = value > 0 || market !== 'us' || !isNutrientKey(key) || !isVitaminOrMineral(key);
  return standsForItself ? { kind: 'known', printed: value, range: whole, source: 'printed' } : wide(whole);
}

function marketRange(key: PanelKey, value: number, place: number, market: Market, base: PanelBase): Interval {
  if (market === 'eu' || market === 'uk' || !isNutrientKey(key)) return euRange(key, value, place);
  if (market === 'ca') return caRange(key, value, place);
  const range = usRange(key, value, place);
  return key === 'potassiumMg' && base === 'before-2016' ? hull(range, sodiumRange(value)) : range;
}

/** 21 CFR 101.9(c)(3): "less than 5 mg" of cholesterol is said from 2 mg on. Every other bound starts at nothing. */
function lessThanRange(key: PanelKey, value: number, market: Market): Interval {
  if (market === 'eu' || market === 'uk') return euLessThanRange(key, value);
  return key === 'cholesterolMg' && value === 5 ? interval(2, 5) : interval(0, value);
}

/**
 * A %DV without an amount. Of fat, sodium and the like the percent may be of the printed amount, so what prints as that
 * amount is in the range too; of minerals the range is that of the unrounded percent: 10 % of potassium, 423 up to 587.5 mg.
 */
function fromPercentAlone(nutrient: Nutrient, figure: Figure, market: Market, base: PanelBase): Amount {
  const percent = figure.percent ?? 0;
  const unrounded = figure.percentLessThan ? interval(0, percent) : unroundedPercent(nutrient, percent);
  const current = dailyValueOf(nutrient, market, 'current');
  const before = dailyValueOf(nutrient, market, 'before-2016');
  const dailyValue = base === 'before-2016' ? before : current;
  if (dailyValue === undefined) return unknown('not-printed');
  if (base === 'unclear' && current !== before) return unknown('old-daily-value-unclear');
  let range = scale(unrounded, dailyValue / 100);
  if (market === 'ca' && before !== undefined) range = hull(range, scale(unrounded, before / 100));
  if (!isVitaminOrMineral(nutrient)) range = printedAsRoundings(nutrient, range);
  return wide(nutrient === 'proteinG' ? interval(range.lo, Number.POSITIVE_INFINITY) : range);
}

/** From the least to the greatest amount whose printed figure falls in the range. */
function printedAsRoundings(nutrient: Nutrient, range: Interval): Interval {
  const low = usDeclaredFigure(nutrient, range.lo);
  const high = usDeclaredFigure(nutrient, range.hi);
  return interval(
    typeof low === 'number' && low >= range.lo ? Math.min(range.lo, usRange(nutrient, low, 1).lo) : range.lo,
    typeof high === 'number' && high <= range.hi ? Math.max(range.hi, usRange(nutrient, high, 1).hi) : range.hi,
  );
}

function withPercent(nutrient: Nutrient, amount: KnownAmount, figure: Figure, percent: number, market: Market): Amount {
  if (figure.percentLessThan) return amount;
  switch (agreement(nutrient, amount.range, percent, market)) {
    case 'contradicts':
      return unknown('contradiction');
    case 'agrees':
      return narrowed(nutrient, amount, percent, market);
    default:
      return amount;
  }
}

/**
 * A percent that the printed amount itself gives tells nothing more; one that it does not give narrows the range, which
 * keeps the printed number in it: 470 mg of sodium at 21 % is 470 up to 475 mg.
 */
function narrowed(nutrient: Nutrient, amount: KnownAmount, percent: number, market: Market): KnownAmount {
  const dailyValue = dailyValueOf(nutrient, market, 'current');
  if (dailyValue === undefined || nutrient === 'proteinG') return amount;
  const allowed = scale(unroundedPercent(nutrient, percent), dailyValue / 100);
  if (amount.printed !== undefined && allowed.lo <= amount.printed && amount.printed <= allowed.hi) return amount;
  const both = intersect(amount.range, allowed) ?? amount.range;
  return { ...amount, range: amount.printed === undefined ? both : hull(both, exactly(amount.printed)) };
}

function wide(range: Interval): KnownAmount {
  return { kind: 'known', range, source: 'printed' };
}
