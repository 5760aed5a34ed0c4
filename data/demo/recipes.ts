import { ingredientsIn, makersIn, recipesIn } from '#data/packages/dataFiles.ts';
import type { Food, Sold } from '#data/packages/recipe.ts';

/** A food and how it is sold in the demo's shops. */
export type DemoFood = Food & { readonly sold: Sold };

export type Category = 'sandwich slices' | 'cold cereals' | 'soups and broths';

const ingredients = ingredientsIn(new URL('./ingredients.json', import.meta.url));
const makers = makersIn(new URL('./makers.json', import.meta.url));

/** Every surveyed food, by the category it is surveyed in. */
export const demoFoods: Readonly<Record<Category, readonly DemoFood[]>> = {
  'sandwich slices': ['meats', 'plantSlices', 'cheeses'].flatMap(file => foodsIn(file, 'sandwich slices')),
  'cold cereals': foodsIn('cereals', 'cold cereals'),
  'soups and broths': foodsIn('soups', 'soups and broths'),
};

/** What the surveyed foods are eaten with. */
export const companionFoods: readonly DemoFood[] = foodsIn('companions', 'companions');

function foodsIn(file: string, category: string): readonly DemoFood[] {
  return recipesIn(new URL(`./recipes/${file}.json`, import.meta.url), { category, ingredients, makers }).map(food => {
    if (!isSold(food)) throw new RangeError(`${file}.json does not say how ${food.id} is sold`);
    return food;
  });
}

function isSold(food: Food): food is DemoFood {
  return food.sold !== undefined;
}
