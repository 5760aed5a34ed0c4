import { exactly, type Interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import { isNutrientKey } from './figure.ts';
import type { FoodState, Market, PanelBasis, PanelKey } from './label.ts';
import { notSignificantRange } from './notSignificant.ts';
import { ownRange } from './printedRange.ts';
import { lineOf, type ReadPanel } from './readPanel.ts';
import type { ReadServing } from './readServing.ts';

/** One column of a label as the audit looks at it: the figures, and the quantity of food they are for. */
export interface PanelView {
  readonly panel: ReadPanel;
  readonly market: Market;
  readonly basis: PanelBasis;
  readonly state: FoodState;
  /** The serving that the column is for; undefined when it has none of its own and may not take the label's. */
  readonly serving: ReadServing | undefined;
  readonly notSignificant: readonly Nutrient[];
  /** Goes before a key in `about`: "" for the panel, "otherColumns[0]." for a column. */
  readonly prefix: string;
}

/** What a line stands for by its own print alone, or by "not a significant source"; undefined where the column is silent. */
export function rangeIn(view: PanelView, key: PanelKey): Interval | undefined {
  const line = lineOf(view.panel, key);
  if (line?.figure?.value !== undefined) return ownRange(key, line.figure, line.figure.value, view.market, view.panel.base).range;
  if (line?.amount.kind === 'known') return line.amount.range;
  if (line === undefined && isNutrientKey(key) && view.notSignificant.includes(key)) return notSignificantRange(key);
  return undefined;
}

/** Grams of food that the column is for; undefined where the label does not tell. A prepared food does not weigh its packaged serving. */
export function gramsOf({ basis, serving, state }: PanelView): Interval | undefined {
  if (basis === 'per-100-g') return exactly(100);
  return basis === 'per-serving' && state !== 'as-prepared' ? serving?.grams?.range : undefined;
}

export function millilitersOf({ basis, serving, state }: PanelView): Interval | undefined {
  if (basis === 'per-100-ml') return exactly(100);
  return basis === 'per-serving' && state !== 'as-prepared' ? serving?.milliliters?.range : undefined;
}

/** No liquid food is heavier: honey weighs about 1.42 g per mL (handbook value, from memory). */
const densestGPerMl = 1.6;

/** The most that the food of a column can weigh; Infinity where nothing tells. */
export function mostGramsOf(view: PanelView): number {
  return gramsOf(view)?.hi ?? (millilitersOf(view)?.hi ?? Number.POSITIVE_INFINITY) * densestGPerMl;
}
