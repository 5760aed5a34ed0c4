import { decimalsOf, placeOf } from '#core/label/figure/scanNumber.ts';
import { around } from '#core/label/figure/usRange.ts';
import { type Interval, interval } from '#core/quantity/interval.ts';
import { cleanFloat } from '#core/quantity/rounding.ts';
import type { HouseholdMeasure, Market, PrintedFigure, PrintedServing } from '../label.ts';
import { type LabelIssue, labelIssue } from '../labelIssue.ts';
import { countedWords, measureIn } from './householdMeasure.ts';

/** A metric quantity as printed, with what its rounding allows. */
export interface MetricQuantity {
  readonly printed: number;
  readonly range: Interval;
}

/** The quantity a panel is for, in every way the label tells it. */
export interface ReadServing {
  readonly household?: HouseholdMeasure;
  readonly grams?: MetricQuantity;
  readonly milliliters?: MetricQuantity;
  readonly perContainer?: MetricQuantity;
  readonly issues: readonly LabelIssue[];
}

const longestServing = 200;
const largestServing = 1_000_000;

/**
 * Reads a serving: "4 slices (56 g)" is 4 of "slice" and 56 g, 55.5 up to 56.5 g by 21 CFR 101.9(b)(7)(ii). Grams in the
 * household words count where no field of their own holds them; where both do and differ, the field stands and an issue
 * says so. What cannot be read is left out with an issue.
 */
export function readServing(serving: PrintedServing, market: Market, where = 'serving'): ReadServing {
  const issues: LabelIssue[] = [];
  let grams = readMetric(serving.grams, 'g', market, `${where}.grams`, issues);
  let milliliters = readMetric(serving.milliliters, 'mL', market, `${where}.milliliters`, issues);
  const perContainer = readPerContainer(serving.perContainer, `${where}.perContainer`, issues);
  let household: HouseholdMeasure | undefined;
  if (serving.household !== undefined && serving.household !== '') {
    const at = `${where}.household`;
    const counted = serving.household.length > longestServing ? [] : countedWords(serving.household, market === 'eu');
    for (const { count, place, words } of counted) {
      const metric = metricUnits[words];
      if (metric === undefined) {
        const measure = household === undefined ? measureIn(words) : undefined;
        if (measure !== undefined && count <= largestServing) household = { count, measure };
        continue;
      }
      const quantity = metricQuantity(count * metric.factor, place * metric.factor, market);
      const own = metric.unit === 'g' ? grams : milliliters;
      if (quantity === undefined) continue;
      if (own !== undefined && (quantity.printed < own.range.lo || quantity.printed > own.range.hi))
        issues.push(
          labelIssue('serving-disagrees', at, serving.household, `${own.printed} ${metric.unit}, as the serving's own field says`),
        );
      if (metric.unit === 'g') grams ??= quantity;
      else milliliters ??= quantity;
    }
    if (household === undefined && grams === undefined && milliliters === undefined)
      issues.push(labelIssue('serving-not-readable', at, serving.household, 'a count and a measure, such as "4 slices (56 g)"'));
  }
  return {
    ...(household === undefined ? {} : { household }),
    ...(grams === undefined ? {} : { grams }),
    ...(milliliters === undefined ? {} : { milliliters }),
    ...(perContainer === undefined ? {} : { perContainer }),
    issues,
  };
}

const metricUnits: Readonly<Record<string, { unit: 'g' | 'mL'; factor: number } | undefined>> = Object.assign(Object.create(null), {
  g: { unit: 'g', factor: 1 },
  gram: { unit: 'g', factor: 1 },
  grams: { unit: 'g', factor: 1 },
  kg: { unit: 'g', factor: 1000 },
  ml: { unit: 'mL', factor: 1 },
  cl: { unit: 'mL', factor: 10 },
  l: { unit: 'mL', factor: 1000 },
});

function readMetric(
  printed: PrintedFigure | undefined,
  unit: 'g' | 'mL',
  market: Market,
  where: string,
  issues: LabelIssue[],
): MetricQuantity | undefined {
  if (printed === undefined || printed === '') return undefined;
  const [count, place] = typeof printed === 'number' ? [printed, placeOf(decimalsOf(printed))] : metricWords(printed, unit, market);
  const quantity = metricQuantity(count, place, market);
  if (quantity === undefined) issues.push(labelIssue('serving-not-readable', where, printed, `a number of ${unit} above 0`));
  return quantity;
}

function metricWords(printed: string, unit: 'g' | 'mL', market: Market): [number, number] {
  const counted = printed.length > longestServing ? [] : countedWords(printed, market === 'eu');
  const only = counted.length === 1 ? counted[0] : undefined;
  if (only === undefined) return [Number.NaN, 0];
  if (only.words === '') return [only.count, only.place];
  const metric = metricUnits[only.words];
  return metric?.unit === unit ? [only.count * metric.factor, only.place * metric.factor] : [Number.NaN, 0];
}

function metricQuantity(count: number, place: number, market: Market): MetricQuantity | undefined {
  if (!(count > 0 && count <= largestServing)) return undefined;
  const printed = cleanFloat(count);
  return { printed, range: market === 'us' ? usServingRange(printed, place) : around(printed, place / 2) };
}

/** 21 CFR 101.9(b)(7)(ii): whole grams or milliliters from 5 up, halves from 2 to 5, tenths below 2; finer prints by their last place. */
function usServingRange(value: number, place: number): Interval {
  if (value === 5) return interval(4.75, 5.5);
  if (value === 2) return interval(1.95, 2.25);
  if (value > 5) return around(value, value % 1 === 0 ? Math.max(0.5, place / 2) : place / 2);
  if (value > 2) return around(value, value % 0.5 === 0 ? 0.25 : place / 2);
  return around(value, Math.min(0.05, place === 0 ? 0.05 : place / 2, value / 2));
}

/** 21 CFR 101.9(b)(8)(i): whole servings, halves from 2 to 5, "about" where rounded. "varied" is no number and no fault. */
function readPerContainer(printed: PrintedFigure | undefined, where: string, issues: LabelIssue[]): MetricQuantity | undefined {
  if (printed === undefined || printed === '') return undefined;
  if (typeof printed === 'string' && printed.length <= longestServing && printed.trim().toLowerCase().startsWith('varie')) return undefined;
  const count =
    typeof printed === 'number' ? printed : printed.length > longestServing ? undefined : countedWords(printed, false)[0]?.count;
  if (count === undefined || !(count > 0 && count <= largestServing)) {
    issues.push(labelIssue('serving-not-readable', where, printed, 'a number of servings, such as "about 4"'));
    return undefined;
  }
  return { printed: count, range: around(count, count >= 2 && count <= 5 ? 0.25 : 0.5) };
}
