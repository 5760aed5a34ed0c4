import type { Interval } from '#core/quantity/interval.ts';

/** What a node of the statement is. Only `ingredient` and `group` weigh something. */
export type IngredientKind =
  /** Something that went into the food, with or without parts of its own. */
  | 'ingredient'
  /** A heading that names a function or blend and weighs what its parts weigh: "leavening (…)", "vegetable oil (one or more of …)". */
  | 'group'
  /** A component of a compound food or one product of a variety pack: "CRUST: …", "Lemon ingredients: …". */
  | 'component';

/** Why an ingredient may be absent although it is listed. */
export type Presence = 'certain' | 'alternative' | 'may-contain';

/** One node of the ingredient tree. Positions are code points of the statement as given, end exclusive. */
export interface Ingredient {
  readonly kind: IngredientKind;
  /** The name, cleaned: notes, marks, percentages and "organic" taken off, blanks folded, case as printed. */
  readonly name: string;
  readonly start: number;
  readonly end: number;
  readonly presence: Presence;
  readonly organic: boolean;
  /** Function and source notes: "preservative", "to preserve freshness", "from corn". */
  readonly notes: readonly string[];
  /** A printed percentage of this ingredient: "mycoprotein (83%)". */
  readonly declaredPercent?: number;
  /** "Contains 2% or less of" over this ingredient: its share is at most this percent. */
  readonly atMostPercent?: number;
  /** Bounds on the share of the whole food in percent, from order, thresholds and printed percentages (21 CFR 101.4). */
  readonly sharePercent: Interval;
  readonly parts: readonly Ingredient[];
}

/** Text of the statement that is no ingredient: allergen lines, facility remarks, footnotes, claims. */
export interface Remark {
  readonly kind: 'allergens' | 'may-contain-allergens' | 'facility' | 'footnote' | 'claim';
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

export interface Statement {
  /** The text as given. */
  readonly text: string;
  readonly ingredients: readonly Ingredient[];
  readonly remarks: readonly Remark[];
}

export type StatementIssueCode =
  | 'bracket-not-closed'
  | 'bracket-not-opened'
  | 'bracket-of-another-kind'
  | 'nesting-too-deep'
  | 'statement-empty'
  | 'statement-cut-off'
  | 'threshold-not-allowed'
  | 'threshold-damaged'
  | 'text-damaged'
  | 'separator-missing'
  | 'percent-out-of-order'
  | 'text-too-long';
