import { notSignificantRange } from '#core/label/figure/notSignificant.ts';
import { ownAmount } from '#core/label/figure/printedRange.ts';
import type { ReadPanel } from '#core/label/panel/readPanel.ts';
import type { ReadServing } from '#core/label/serving/readServing.ts';
import { exactly, type Interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { FoodState, Market, PanelBasis } from '../label.ts';
import type { PanelKey } from '../panelKeys.ts';

/** One column of a label as the audit looks at it: the figures, and the quantity of food they are for. */
export interface PanelView {
  readonly panel: ReadPanel;
  /** By panel key, what `printedRanges` says; no entry where the column is silent. */
  readonly ranges: Ranges;
  readonly market: Market;
  readonly basis: PanelBasis;
  readonly state: FoodState;
  /** The serving that the column is for; undefined when it has none of its own and may not take the label's. */
  readonly serving: ReadServing | undefined;
  readonly notSignificant: readonly Nutrient[];
  /** Goes before a key in `about`: "" for the panel, "otherColumns[0]." for a column. */
  readonly prefix: string;
}

type Ranges = Readonly<Partial<Record<PanelKey, Interval>>>;

/** What each line stands for by its own print, a %DV beside it left out of account, or by "not a significant source". */
export function printedRanges(panel: ReadPanel, market: Market, notSignificant: readonly Nutrient[]): Ranges {
  const ranges: Partial<Record<PanelKey, Interval>> = {};
  for (const nutrient of notSignificant) ranges[nutrient] = notSignificantRange(nutrient);
  for (const { key, figure, amount } of panel.lines) {
    const own = figure && ownAmount(key, figure, market, panel.base);
    const range = own?.range ?? (amount.kind === 'known' ? amount.range : undefined);
    if (range === undefined) delete ranges[key];
    else ranges[key] = range;
  }
  return ranges;
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
