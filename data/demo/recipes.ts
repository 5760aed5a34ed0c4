import { cerealRecipes, cerealVarietyPack } from './cerealRecipes.ts';
import { cheeseRecipes } from './cheeseRecipes.ts';
import { deliRecipes } from './deliRecipes.ts';
import { plantSliceRecipes } from './plantSliceRecipes.ts';
import type { DemoFood } from './recipe.ts';
import { soupRecipes } from './soupRecipes.ts';

/** Every surveyed food, by the category it is surveyed in. */
export const demoFoods: Readonly<Record<Category, readonly DemoFood[]>> = {
  'sandwich slices': [...deliRecipes, ...plantSliceRecipes, ...cheeseRecipes],
  'cold cereals': [...cerealRecipes, cerealVarietyPack],
  'soups and broths': soupRecipes,
};

export type Category = 'sandwich slices' | 'cold cereals' | 'soups and broths';
