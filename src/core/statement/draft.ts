import type { IngredientKind, Presence } from './statement.ts';

/** An ingredient while the tree is being read: offsets in UTF-16 units, no share bounds yet. */
export interface Draft {
  kind: IngredientKind;
  name: string;
  start: number;
  end: number;
  presence: Presence;
  organic: boolean;
  notes: string[];
  declaredPercent?: number;
  /** Decimals of the declared percentage: they tell its rounding. */
  declaredDecimals?: number;
  atMostPercent?: number;
  /** Percent of raw weight that an injected solution may be (9 CFR 317.2(e)(2)). */
  solutionPercent?: number;
  /** The parts stand in no order, because they are alternatives to each other. */
  unordered?: boolean;
  /** Its own place in the list says nothing about its weight: "cooked in vegetable oil". */
  outOfOrder?: boolean;
  parts: Draft[];
}

export function newDraft(name: string, start: number, end: number): Draft {
  return { kind: 'ingredient', name, start, end, presence: 'certain', organic: false, notes: [], parts: [] };
}
