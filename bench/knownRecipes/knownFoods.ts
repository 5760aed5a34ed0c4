import type { PrintedPanel } from '#core/label/label.ts';
import { type Composition, compositionPer100G, perFinished100G } from '#data/packages/composition.ts';
import { printedPackage } from '#data/packages/printedPackage.ts';
import { partsOf, type Recipe } from '#data/packages/recipe.ts';
import { type Kind, knownRecipes, styleAt } from './knownRecipes.ts';
import { addedMgPer100G, sr28Figures } from './sr28Figures.ts';

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

/** What 100 g of the finished food truly hold. The added milligrams are a part of the phosphorus and of the potassium. */
type Truth = Composition & { readonly addedPhosphorusMg: number; readonly addedPotassiumMg: number };

/** No mineral leaves with the water. */
export function truthPer100G(recipe: Recipe): Truth {
  return {
    ...compositionPer100G(recipe, sr28Figures),
    addedPhosphorusMg: perFinished100G(recipe, ingredient => addedMgPer100G(ingredient, 'phosphorus')),
    addedPotassiumMg: perFinished100G(recipe, ingredient => addedMgPer100G(ingredient, 'potassium')),
  };
}

/**
 * The held-out foods: statement and panel to estimate from, and the truth to compare with.
 *
 * @throws RangeError when a recipe uses a row without the figures of a truth.
 */
export function knownFoods(): readonly KnownFood[] {
  return knownRecipes.map((recipe, index) => {
    const { id, kind, serving } = recipe;
    const per100G = truthPer100G(recipe);
    const perServing = (amount: number) => (amount * serving.grams) / 100;
    const { statement, figures } = printedPackage(recipe, styleAt(index), sr28Figures);
    return {
      id,
      kind,
      statement,
      household: serving.household,
      servingG: serving.grams,
      panel: figures,
      truth: {
        phosphorusMg: perServing(per100G.phosphorusMg),
        potassiumMg: perServing(per100G.potassiumMg),
        addedPhosphorusMg: perServing(per100G.addedPhosphorusMg),
        addedPotassiumMg: perServing(per100G.addedPotassiumMg),
      },
      ndbUsed: [
        ...new Set(recipe.items.flatMap(partsOf).flatMap(({ ingredient: { source } }) => (source.kind === 'sr28' ? [source.ndb] : []))),
      ],
    };
  });
}
