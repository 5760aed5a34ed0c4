import type { AdditiveFinding } from '#core/additive/additive.ts';
import type { Issue } from '#core/errors.ts';
import type { Amount } from '#core/quantity/amount.ts';
import type { Interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { Statement } from '#core/statement/statement.ts';
import type { foodStates, markets, panelBases } from './labelJson.ts';
import type { PanelKey } from './panelKeys.ts';

export type Market = (typeof markets)[number];
export type PanelBasis = (typeof panelBases)[number];
export type FoodState = (typeof foodStates)[number];

/** A figure as typed from the package: a number in the key's unit, or the words ("<1 g", "470 mg 10%", "10%"). */
export type PrintedFigure = number | string;

export type PrintedPanel = Readonly<Partial<Record<PanelKey, PrintedFigure>>>;

export interface PrintedServing {
  /** "4 slices", "1/2 cup": the household measure as printed. */
  readonly household?: string;
  readonly grams?: PrintedFigure;
  readonly milliliters?: PrintedFigure;
  readonly perContainer?: PrintedFigure;
}

export interface PrintedColumn {
  readonly basis: PanelBasis;
  readonly state: FoodState;
  /** Only when it differs from the label's own serving ("per package"). */
  readonly serving?: PrintedServing;
  readonly panel: PrintedPanel;
}

/**
 * The reference amount customarily consumed, by which US claims are judged (21 CFR 101.12): a key of
 * data/reference-amounts.json, or an amount of its own. `kind` tells meals and main dishes, judged per 100 g.
 */
export type ReferenceAmount =
  | string
  | { readonly grams?: number; readonly milliliters?: number; readonly kind?: 'individual' | 'main-dish' | 'meal' };

/** What one package said on one day. Never edited; a change is a new label of the same food. docs/formats.md holds the JSON. */
export interface PrintedLabel {
  readonly id?: string;
  readonly name?: string;
  readonly maker?: string;
  readonly category?: string;
  readonly gtin?: string;
  readonly market: Market;
  /** Calendar day the package was read, yyyy-mm-dd. */
  readonly readOn?: string;
  /** The shop it was read in. */
  readonly readAt?: string;
  readonly serving: PrintedServing;
  readonly basis: PanelBasis;
  readonly state: FoodState;
  /** Words on the front: claims, "contains up to 15% of a solution". */
  readonly front: readonly string[];
  readonly panel: PrintedPanel;
  /** The words after "Not a significant source of". */
  readonly notSignificantSourceOf?: string;
  readonly otherColumns: readonly PrintedColumn[];
  readonly statement?: string;
  readonly referenceAmount?: ReferenceAmount;
  /** The id or name of the salted food whose unsalted version this is. */
  readonly unsaltedVersionOf?: string;
}

/** A count of a household measure with its singular name: "4 slices" is { count: 4, measure: 'slice' }. */
export interface HouseholdMeasure {
  readonly count: number;
  readonly measure: string;
}

/**
 * The quantity that `ReadLabel.amounts` belong to, in every way the label tells it. A US panel of "4 slices (56 g)":
 * { servings: 1, grams: 56, household: { count: 4, measure: 'slice' } }. An EU panel: { grams: 100 }, and
 * { servings: 100 / 30 } with it when a portion of 30 g is printed.
 */
export interface AmountsFor {
  readonly servings?: number;
  readonly grams?: number;
  readonly milliliters?: number;
  readonly household?: HouseholdMeasure;
}

export type Amounts = Readonly<Record<Nutrient, Amount>>;

/** A finding of the audit: something noticed about the label as printed. */
export interface Finding {
  readonly code: FindingCode;
  /** The panel key or field it is about. */
  readonly about: string;
  /** One sentence with its numbers and units. */
  readonly message: string;
  /** The rule it rests on, with its source. */
  readonly source: string;
}

export type FindingCode =
  | 'energy-does-not-add-up'
  | 'part-larger-than-whole'
  | 'daily-value-does-not-agree'
  | 'not-a-us-print'
  | 'serving-mass-against-measure'
  | 'gtin-check-digit'
  | 'gtin-variable-weight'
  | 'old-daily-values'
  | 'potassium-zero-beside-potassium-salt'
  | 'impossible-value'
  | 'threshold-not-allowed'
  | 'columns-disagree'
  | 'figures-disagree';

/** A label after reading: every figure with its range, the statement as a tree, additives found, what the audit noticed. */
export interface ReadLabel {
  readonly printed: PrintedLabel;
  /** For `amountsFor`; every nutrient has an entry, unknown where the label is silent. */
  readonly amounts: Amounts;
  readonly amountsFor: AmountsFor;
  /** The serving's mass with its own rounding (21 CFR 101.9(b)(7)(ii)); absent when no grams are printed. */
  readonly servingGrams?: Interval;
  /** The serving's volume with its own rounding; absent when no milliliters are printed. */
  readonly servingMilliliters?: Interval;
  /** Where `notSignificantSourceOf`, a %DV or a wide zero was the source: the words, by nutrient, for "why" sentences. */
  readonly asPrinted: Readonly<Partial<Record<Nutrient, string>>>;
  /** Absent when no statement was read: additives are then unknown, not absent. */
  readonly statement?: Statement;
  readonly additives: readonly AdditiveFinding[];
  readonly findings: readonly Finding[];
  readonly issues: readonly Issue[];
}
