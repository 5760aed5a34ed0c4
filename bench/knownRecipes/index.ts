import type { PrintedPanel } from '#core/label/label.ts';
import { breads } from './breads.ts';
import { cannedFoods } from './cannedFoods.ts';
import { cereals } from './cereals.ts';
import { cheeseDishes } from './cheeseDishes.ts';
import { compositionPer100G } from './composition.ts';
import { crackersAndCookies } from './crackersAndCookies.ts';
import { dairyDesserts } from './dairyDesserts.ts';
import { deliMeats } from './deliMeats.ts';
import { frozenMeals } from './frozenMeals.ts';
import { injectedMeats } from './injectedMeats.ts';
import { mixes } from './mixes.ts';
import { printedPanel, type StatementStyle, statementText } from './package.ts';
import { plantFoods } from './plantFoods.ts';
import { processedCheeses } from './processedCheeses.ts';
import { type BaseRecipe, type Kind, partsOf, type Recipe, twoRecipes } from './recipe.ts';
import { sauces } from './sauces.ts';
import { snacks } from './snacks.ts';
import { softDrinks } from './softDrinks.ts';
import { soups } from './soups.ts';

/** A food of known recipe as a package shows it, and what it truly holds. */
export interface KnownFood {
  readonly id: string;
  readonly kind: Kind;
  readonly statement: string;
  readonly household: string;
  readonly servingG: number;
  /** Printed per serving, keys as in label JSON (docs/formats.md); without potassium and phosphorus. */
  readonly panel: PrintedPanel;
  /** Per serving. The added milligrams, from additives, are a part of the whole. */
  readonly truth: {
    readonly phosphorusMg: number;
    readonly potassiumMg: number;
    readonly addedPhosphorusMg: number;
    readonly addedPotassiumMg: number;
  };
  /** Rows of USDA SR28 that the truth rests on, each once. */
  readonly ndbUsed: readonly string[];
}

const bases: Readonly<Record<Kind, readonly BaseRecipe[]>> = {
  bread: breads,
  'cracker or cookie': crackersAndCookies,
  'breakfast cereal or bar': cereals,
  'processed cheese': processedCheeses,
  'cheese dish': cheeseDishes,
  'deli meat or sausage': deliMeats,
  'injected poultry or fish': injectedMeats,
  'frozen meal': frozenMeals,
  soup: soups,
  'sauce or dressing': sauces,
  'canned bean or vegetable': cannedFoods,
  'plant drink or slice': plantFoods,
  'dairy dessert or yogurt': dairyDesserts,
  'soft drink': softDrinks,
  snack: snacks,
  'baking mix or pudding': mixes,
};

/** Every recipe, two to a base, in a fixed order. */
export const knownRecipes: readonly Recipe[] = (Object.keys(bases) as readonly Kind[]).flatMap(kind =>
  bases[kind].flatMap(base => twoRecipes(kind, base)),
);

/** How the package of the recipe at this place is printed: half with the clause, in a pattern that runs across first and second recipes; a third in capitals. */
export function styleAt(index: number): StatementStyle {
  return { clause: index % 4 === 1 || index % 4 === 2, capitals: index % 3 === 0 };
}

/**
 * The held-out foods: statement and panel to estimate from, and the truth to compare with. Reads SR28 from the folder of open data.
 *
 * @throws RangeError when a recipe uses a row without the figures of a truth.
 */
export function knownFoods(): readonly KnownFood[] {
  return knownRecipes.map((recipe, index) => {
    const per100G = compositionPer100G(recipe);
    const perServing = (amount: number) => (amount * recipe.servingG) / 100;
    return {
      id: recipe.id,
      kind: recipe.kind,
      statement: statementText(recipe, styleAt(index)),
      household: recipe.household,
      servingG: recipe.servingG,
      panel: printedPanel(per100G, recipe.servingG),
      truth: {
        phosphorusMg: perServing(per100G.phosphorusMg),
        potassiumMg: perServing(per100G.potassiumMg),
        addedPhosphorusMg: perServing(per100G.addedPhosphorusMg),
        addedPotassiumMg: perServing(per100G.addedPotassiumMg),
      },
      ndbUsed: [...new Set(recipe.items.flatMap(partsOf).flatMap(({ item }) => ('ndb' in item ? [item.ndb] : [])))],
    };
  });
}
