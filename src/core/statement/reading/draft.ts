import type { IngredientKind, Presence } from '../statement.ts';

/** An ingredient while the tree is being read: offsets in UTF-16 units, no share bounds yet. */
export interface Draft {
  kind: IngredientKind;
  name: string;
  start: number;
  end: number;
  presence: Presence;
  organic: boolean;
  notes: string[];
  declaredPercent: number | undefined;
  /** Decimals of the declared percentage: they tell its rounding. */
  declaredDecimals: number;
  atMostPercent: number | undefined;
  /** Percent of raw weight that an injected solution may be (9 CFR 317.2(e)(2)). */
  solutionPercent: number | undefined;
  /** The parts stand in no order, because they are alternatives to each other. */
  unordered: boolean;
  /** Its own place in the list says nothing about its weight: "cooked in vegetable oil". */
  outOfOrder: boolean;
  parts: Draft[];
}

/** Most ingredients have neither notes nor parts: they share these lists, which nobody may write to. */
const noNotes: string[] = [];
const noParts: Draft[] = [];
Object.freeze(noNotes);
Object.freeze(noParts);

/** A draft with all its fields, so that all drafts have one shape. */
export function newDraft(name: string, start: number, end: number): Draft {
  return {
    kind: 'ingredient',
    name,
    start,
    end,
    presence: 'certain',
    organic: false,
    notes: noNotes,
    declaredPercent: undefined,
    declaredDecimals: 0,
    atMostPercent: undefined,
    solutionPercent: undefined,
    unordered: false,
    outOfOrder: false,
    parts: noParts,
  };
}

/** Adds a note at the end. */
export function addNote(draft: Draft, note: string): void {
  if (draft.notes.length === 0) draft.notes = [note];
  else draft.notes.push(note);
}

/** Puts a note before the others. */
export function leadWithNote(draft: Draft, note: string): void {
  draft.notes = [note, ...draft.notes];
}

/** Adds parts at the end. The list becomes the draft's own: the caller gives it away. */
export function addParts(draft: Draft, parts: Draft[]): void {
  if (draft.parts.length === 0) draft.parts = parts;
  else for (const part of parts) draft.parts.push(part);
}
