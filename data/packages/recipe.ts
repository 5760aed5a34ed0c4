import type { Ingredient } from './ingredient.ts';
import type { Maker } from './maker.ts';
import type { Oddity, Serving, SoldEntry } from './recipeFile.ts';

/** One ingredient of a recipe: grams in 100 g of everything that goes in, above nothing. */
export interface Line {
  readonly grams: number;
  /** The name in the file of ingredients. */
  readonly of: string;
  readonly ingredient: Ingredient;
  /** The words on the label. */
  readonly words: string;
  /** A function note in brackets: "to preserve color". */
  readonly note?: string;
}

/** Ingredients under one name, which weighs what they weigh: "leavening (…)", or after a colon: "vitamins and minerals: …". */
export interface Group {
  readonly name: string;
  readonly colon?: true;
  readonly parts: readonly Line[];
}

export type RecipeItem = Line | Group;

export type Sold = Omit<SoldEntry, 'maker'> & { readonly maker: Maker };

/** What stands on the package beside what the recipe decides. */
export interface PackageFacts {
  readonly id: string;
  readonly name: string;
  readonly serving: Serving;
  readonly allergens?: string;
  readonly leavesOutZeros?: true;
  readonly sold?: Sold;
  readonly odd?: Oddity;
}

/** A food as its maker knows it, and the package as a shopper meets it. */
export interface Recipe extends PackageFacts {
  readonly items: readonly RecipeItem[];
  /** Grams of finished food from 100 g of what goes in. */
  readonly yieldG: number;
}

/** Several foods in one carton, equal weights of each: one panel for the mean, one ingredient list a food. */
interface VarietyPack extends PackageFacts {
  readonly boxes: readonly Recipe[];
}

export type Food = Recipe | VarietyPack;

export function isRecipe<Any extends Food>(food: Any): food is Extract<Any, Recipe> {
  return 'items' in food;
}

export function partsOf(item: RecipeItem): readonly Line[] {
  return 'parts' in item ? item.parts : [item];
}

export function gramsOf(item: RecipeItem): number {
  return partsOf(item).reduce((sum, { grams }) => sum + grams, 0);
}
