import type { FoodState } from '#core/label/label.ts';
import type ingredients from './ingredients.json';
import type { MakerKey } from './makers.ts';
import type { Oddity } from './oddity.ts';

export type IngredientName = keyof typeof ingredients;

/** One ingredient of a recipe: grams in 100 g of everything that goes in. */
export interface Line {
  readonly grams: number;
  readonly of: IngredientName;
  /** The words on the label, where they are not the ingredient's own. */
  readonly as?: string;
  /** A function note in brackets: "to preserve color". */
  readonly note?: string;
}

/** Ingredients under one name: "leavening (…)", or after a colon as the last words of the list: "vitamins and minerals: …". */
export interface Group {
  readonly name: string;
  readonly parts: readonly Line[];
  readonly colon?: true;
}

export type RecipeItem = Line | Group;

export interface Serving {
  readonly household: string;
  readonly grams: number;
  readonly milliliters?: number;
  readonly perContainer: string;
}

/** A food as its maker knows it, and the package as a shopper meets it. */
export interface Recipe {
  readonly id: string;
  readonly name: string;
  readonly maker: MakerKey;
  readonly items: readonly RecipeItem[];
  /** Grams of finished food from 100 g of what goes in; the difference is water that left. 100 when missing. */
  readonly yieldG?: number;
  readonly serving: Serving;
  /** As packaged when missing. */
  readonly state?: FoodState;
  /** A key of data/reference-amounts.json. */
  readonly referenceAmount: string;
  /** Five digits that, with the maker's, make the GTIN. */
  readonly itemNumber: number;
  readonly readOn: string;
  readonly readAt: Shop;
  readonly front?: readonly string[];
  /** The allergen line: "milk, soy". */
  readonly allergens?: string;
  /** Zeros are left out of the panel and named in "Not a significant source of". */
  readonly leavesOutZeros?: true;
  readonly unsaltedVersionOf?: string;
  readonly odd?: Oddity;
}

/** Several foods in one carton, equal weights of each: one panel for the mean, one ingredient list a food. */
export interface VarietyPack extends Omit<Recipe, 'items' | 'yieldG'> {
  readonly boxes: readonly Recipe[];
}

export type DemoFood = Recipe | VarietyPack;

export type Shop = 'Brackwater Market' | 'Tollen Foods' | 'Pennyfold Pantry';

export function line(grams: number, of: IngredientName, words: { readonly as?: string; readonly note?: string } = {}): Line {
  return { grams, of, ...words };
}

export function group(name: string, parts: readonly Line[]): Group {
  return { name, parts };
}

/** The group that ends a list: "vitamins and minerals: calcium carbonate, reduced iron". */
export function lastWords(name: string, parts: readonly Line[]): Group {
  return { name, parts, colon: true };
}

export function partsOf(item: RecipeItem): readonly Line[] {
  return 'parts' in item ? item.parts : [item];
}

export function gramsOf(item: RecipeItem): number {
  return partsOf(item).reduce((sum, { grams }) => sum + grams, 0);
}
