import { type Interval, interval, overlaps, scale } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import type { Market } from '../label.ts';
import { isVitaminOrMineral } from './usPrintRule.ts';

/** Panels under USDA-FSIS (9 CFR 317.309, 381.409) may still print percents of the Daily Values from before 2016. */
export type DailyValueBase = 'current' | 'before-2016';

/** Canada, Table of Daily Values of 20 October 2022 (all but potassium from memory); the rest is as in the US. */
const canadianDailyValue: Partial<Record<Nutrient, number | null>> = {
  fatG: 75,
  carbohydrateG: null,
  totalSugarsG: 100,
  proteinG: null,
  addedSugarsG: null,
  potassiumMg: 3400,
};

/** Until 31 December 2025 a Canadian panel could still use 4700 mg of potassium as its base. */
const canadianDailyValueBefore: Partial<Record<Nutrient, number | null>> = { potassiumMg: 4700 };

/** The amount that 100 % stands for, in the nutrient's unit; undefined where there is none. EU and UK have no Daily Values. */
export function dailyValueOf(nutrient: Nutrient, market: Market, base: DailyValueBase): number | undefined {
  const facts = nutrients[nutrient];
  switch (market) {
    case 'us':
      return (base === 'current' ? facts.dailyValue : facts.dailyValueBefore2016) ?? undefined;
    case 'ca': {
      const own = base === 'current' ? undefined : canadianDailyValueBefore[nutrient];
      const value = own ?? canadianDailyValue[nutrient];
      return (value === undefined ? facts.dailyValue : value) ?? undefined;
    }
    default:
      return undefined;
  }
}

/**
 * The unrounded percents that a printed %DV stands for: 21 CFR 101.9(c)(8)(iii) for vitamins and minerals, (d)(7)(ii) for
 * the others. 10 % of potassium is 9 up to 12.5 %; 0 % is anything under 2 %; 2 % may stand for 1 % and more.
 */
export function unroundedPercent(nutrient: Nutrient, percent: number): Interval {
  if (!isVitaminOrMineral(nutrient)) return interval(Math.max(0, percent - 0.5), percent + 0.5);
  if (percent < 2) return interval(0, 2);
  const half = percentStep(nutrient, percent) / 2;
  // 10 and 50 are reached by the finer step from below and by the coarser one from above.
  if (percent === 10) return interval(9, 12.5);
  if (percent === 50) return interval(47.5, 55);
  return interval(percent - half, percent + half);
}

/** The step in which a %DV is printed at this height. */
function percentStep(nutrient: Nutrient, percent: number): number {
  if (!isVitaminOrMineral(nutrient)) return 1;
  if (percent <= 10) return 2;
  return percent <= 50 ? 5 : 10;
}

/** True where a US panel can print this percent at all: 13 % of potassium it cannot. */
export function isPrintablePercent(nutrient: Nutrient, percent: number): boolean {
  return percent % percentStep(nutrient, percent) === 0;
}

/**
 * How a printed amount and the %DV beside it go together. Percents may be computed from the printed or from the unrounded
 * amount (101.9(d)(7)(ii); for vitamins and minerals guidance practice, from memory), so either is enough.
 * - `agrees`: on today's Daily Value. 470 mg of sodium goes with 20 % and with 21 %.
 * - `agrees-before-2016`: only on the old one. 480 mg of sodium at 20 %.
 * - `one-step-off`: the percent is the next one up or down; a slip in the percent, the amount stands.
 * - `contradicts`: no rounding explains it, so one of the two is wrong.
 */
export type Agreement = 'agrees' | 'agrees-before-2016' | 'one-step-off' | 'contradicts';

export function agreement(nutrient: Nutrient, range: Interval, percent: number, market: Market): Agreement {
  const current = dailyValueOf(nutrient, market, 'current');
  if (current === undefined || !percentTellsAmount(nutrient)) return 'agrees';
  if (agreesOn(current, nutrient, range, percent)) return 'agrees';
  const before = dailyValueOf(nutrient, market, 'before-2016');
  if (before !== undefined && agreesOn(before, nutrient, range, percent)) return 'agrees-before-2016';
  const { lo, hi } = unroundedPercent(nutrient, percent);
  const step = percentStep(nutrient, percent);
  return overlaps(scale(range, 100 / current), interval(Math.max(0, lo - step), hi + step)) ? 'one-step-off' : 'contradicts';
}

/** True where the percent can only be of today's Daily Value, not of the old one. */
export function onlyCurrentAgrees(nutrient: Nutrient, range: Interval, percent: number, market: Market): boolean {
  const current = dailyValueOf(nutrient, market, 'current');
  const before = dailyValueOf(nutrient, market, 'before-2016');
  if (current === undefined || before === undefined || !percentTellsAmount(nutrient)) return false;
  return agreesOn(current, nutrient, range, percent) && !agreesOn(before, nutrient, range, percent);
}

/** The protein percent is of protein corrected for quality (21 CFR 101.9(c)(7)(ii)): it says little about the grams. */
function percentTellsAmount(nutrient: Nutrient): boolean {
  return nutrient !== 'proteinG';
}

/** The printed number lies in its range, so this holds for a percent of the printed number too. */
function agreesOn(dailyValue: number, nutrient: Nutrient, range: Interval, percent: number): boolean {
  return overlaps(scale(range, 100 / dailyValue), unroundedPercent(nutrient, percent));
}
