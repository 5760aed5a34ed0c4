import {
  type Figures,
  type FiguresOf,
  figuresFrom,
  type Ingredient,
  type OtherFigure,
  type SureFigure,
  writtenFigures,
} from './ingredient.ts';
import { type Food, isRecipe, partsOf, type Recipe } from './recipe.ts';

/** What 100 g of the finished food truly hold; an absent figure is unknown. */
export type Composition = Figures & { readonly energyKcal: number };

export function compositionPer100G(food: Food, figuresOf: FiguresOf = writtenFigures): Composition {
  return isRecipe(food) ? recipeComposition(food, figuresOf) : mean(food.boxes.map(box => recipeComposition(box, figuresOf)));
}

/**
 * Adds up the ingredients and takes the cooking loss off as water, so that all else is left in fewer grams.
 * 2 g of salt in 100 g that roast down to 80 g: 984 mg of sodium per 100 g, from 787.
 *
 * @throws RangeError when more water leaves than the recipe holds.
 */
function recipeComposition(recipe: Recipe, figuresOf: FiguresOf): Composition {
  const { id, items, yieldG } = recipe;
  const sure = (figure: SureFigure) => perFinished100G(recipe, ingredient => figuresOf(ingredient)[figure]);
  const waterG = sure('waterG') - ((100 - yieldG) * 100) / yieldG;
  if (waterG < 0) throw new RangeError(`${id}: more water leaves than goes in`);
  const isKnown = (figure: OtherFigure) =>
    items.flatMap(partsOf).every(({ grams, ingredient }) => grams <= nextToNothingG || figuresOf(ingredient)[figure] !== undefined);
  const figures = figuresFrom(
    figure => (figure === 'waterG' ? waterG : sure(figure)),
    figure => (isKnown(figure) ? perFinished100G(recipe, ingredient => figuresOf(ingredient)[figure] ?? 0) : undefined),
  );
  return { ...figures, energyKcal: energyKcal(figures) };
}

/** What of so few grams in 100 g (spices, yeast) is not known is read as nothing. */
const nextToNothingG = 1;

/** What the ingredients of 100 g of the finished food bring, where each brings so much in 100 g of itself. */
export function perFinished100G({ items, yieldG }: Pick<Recipe, 'items' | 'yieldG'>, amountPer100G: (of: Ingredient) => number): number {
  return items.flatMap(partsOf).reduce((sum, { grams, ingredient }) => sum + (grams * amountPer100G(ingredient)) / yieldG, 0);
}

/** General factors, 21 CFR 101.9(c)(1)(i)(B): 4 kcal a gram of protein and of total carbohydrate, 9 of fat, before rounding. */
function energyKcal({ proteinG, carbohydrateG, fatG }: Figures): number {
  return 4 * proteinG + 4 * carbohydrateG + 9 * fatG;
}

/** Equal weights of each; known is what is known of all. */
function mean(each: readonly Composition[]): Composition {
  const meanOf = (figures: readonly number[]) => figures.reduce((sum, figure) => sum + figure, 0) / figures.length;
  const figures = figuresFrom(
    figure => meanOf(each.map(one => one[figure])),
    figure => {
      const known = each.flatMap(one => one[figure] ?? []);
      return known.length === each.length ? meanOf(known) : undefined;
    },
  );
  return { ...figures, energyKcal: meanOf(each.map(one => one.energyKcal)) };
}
