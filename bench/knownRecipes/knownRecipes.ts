import { ingredientsIn, recipesIn } from '#data/packages/dataFiles.ts';
import type { PrintStyle } from '#data/packages/maker.ts';
import { isRecipe, type Recipe } from '#data/packages/recipe.ts';

/** Each kind of food, and the file of its recipes. */
const files = [
  ['bread', 'breads'],
  ['cracker or cookie', 'crackersAndCookies'],
  ['breakfast cereal or bar', 'cereals'],
  ['processed cheese', 'processedCheeses'],
  ['cheese dish', 'cheeseDishes'],
  ['deli meat or sausage', 'deliMeats'],
  ['injected poultry or fish', 'injectedMeats'],
  ['frozen meal', 'frozenMeals'],
  ['soup', 'soups'],
  ['sauce or dressing', 'sauces'],
  ['canned bean or vegetable', 'cannedFoods'],
  ['plant drink or slice', 'plantFoods'],
  ['dairy dessert or yogurt', 'dairyDesserts'],
  ['soft drink', 'softDrinks'],
  ['snack', 'snacks'],
  ['baking mix or pudding', 'mixes'],
] as const;

export type Kind = (typeof files)[number][0];

export const kinds: readonly Kind[] = files.map(([kind]) => kind);

type KnownRecipe = Recipe & { readonly kind: Kind };

/** Everything that the known recipes are made of. */
export const pantry = ingredientsIn(new URL('./pantry.json', import.meta.url));

/** Every recipe, the two versions of a food after one another, in a fixed order. */
export const knownRecipes: readonly KnownRecipe[] = files.flatMap(([kind, file]) =>
  recipesIn(new URL(`./recipes/${file}.json`, import.meta.url), { category: kind, ingredients: pantry })
    .filter(isRecipe)
    .map(recipe => ({ ...recipe, kind })),
);

/**
 * How the package of the recipe at this place is printed: half with the clause, in a pattern that runs across first and second
 * versions; a third in capitals. Potassium and phosphorus are what the model is asked for: they are not printed.
 */
export function styleAt(index: number): PrintStyle {
  return {
    letters: index % 3 === 0 ? 'upper' : 'sentence',
    ...(index % 4 === 1 || index % 4 === 2 ? { clause: { words: 'contains 2% or less of:', percent: 2 } } : {}),
    innerBrackets: 'square',
    opening: '',
    ending: '.',
    allergenWords: 'Contains:',
    percents: 'none',
    lessThan: 'less than ',
    lines: [
      'energyKcal',
      'fatG',
      'saturatedFatG',
      'cholesterolMg',
      'sodiumMg',
      'carbohydrateG',
      'fiberG',
      'totalSugarsG',
      'proteinG',
      'calciumMg',
      'ironMg',
    ],
  };
}
