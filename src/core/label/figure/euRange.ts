import { type Interval, interval } from '#core/quantity/interval.ts';
import type { PanelKey } from '../panelKeys.ts';
import { around } from './usRange.ts';

/**
 * Up to these amounts an EU or UK panel may print "0": Commission guidance on tolerances of December 2012, rounding table.
 * The same guidance lets "< 0.01 g" of salt stand for up to 0.0125 g.
 */
const zeroUpTo: Partial<Record<PanelKey, number>> = {
  fatG: 0.5,
  saturatedFatG: 0.1,
  carbohydrateG: 0.5,
  totalSugarsG: 0.5,
  sugarAlcoholG: 0.5,
  fiberG: 0.5,
  proteinG: 0.5,
  saltG: 0.0125,
  sodiumMg: 5,
};

/** Vitamins and minerals carry at most this many significant figures (same guidance): 3, and 2 for iron and vitamin D. */
const significantFigures: Partial<Record<PanelKey, number>> = {
  potassiumMg: 3,
  calciumMg: 3,
  phosphorusMg: 3,
  magnesiumMg: 3,
  ironMg: 2,
  vitaminDMcg: 2,
};

/**
 * The true amounts that an EU or UK panel may print as this number, in the key's unit: half of the last printed place on
 * either side. "0.80 g" of salt is 0.795 up to 0.805 g; "0.8 g" may be coarser, 0.75 up to 0.85 g.
 */
export function euRange(key: PanelKey, value: number, place: number): Interval {
  if (value === 0) return interval(0, Math.max(zeroUpTo[key] ?? 0, place / 2));
  const figures = significantFigures[key];
  const step = figures === undefined ? place : Math.max(place, 10 ** (Math.floor(Math.log10(value)) + 1 - figures));
  return around(value, step / 2);
}

/** What "< value" stands for. */
export function euLessThanRange(key: PanelKey, value: number): Interval {
  return interval(0, key === 'saltG' && value === 0.01 ? zeroUpTo.saltG! : value);
}
