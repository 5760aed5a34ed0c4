import table from '#data/referenceFoods.json' with { type: 'json' };

/** What a reference food tells of 100 g. Water is in grams here, as the table weighs it. */
export type ReferenceNutrient =
  | 'waterG'
  | 'energyKcal'
  | 'proteinG'
  | 'fatG'
  | 'saturatedFatG'
  | 'cholesterolMg'
  | 'carbohydrateG'
  | 'fiberG'
  | 'totalSugarsG'
  | 'alcoholG'
  | 'calciumMg'
  | 'ironMg'
  | 'magnesiumMg'
  | 'phosphorusMg'
  | 'potassiumMg'
  | 'sodiumMg';

/**
 * A food or ingredient of the composition table (data/referenceFoods.json, from USDA SR28). Whole milk holds 84 mg of
 * phosphorus in 100 g: `referenceFood('whole-milk')?.per100G.phosphorusMg`.
 */
export interface ReferenceFood {
  readonly id: string;
  readonly name: string;
  /** Other names that US statements print for it, lower case. */
  readonly aliases: readonly string[];
  /** Numbers of its rows (SR28's in our own table): the first gives the figures, all of them the spread. */
  readonly ndb: readonly string[];
  readonly group: string;
  /** How the body takes up its phosphorus: bound as phytate, animal, added as a salt, hardly any there, or nobody knows. */
  readonly phosphorusKind: 'plant' | 'animal' | 'inorganic' | 'none' | 'unknown';
  /** Null is unknown, never zero. */
  readonly per100G: Readonly<Record<ReferenceNutrient, number | null>>;
  /** Lowest and highest figure of its rows; empty where it has one row. */
  readonly spread: Partial<Readonly<Record<ReferenceNutrient, readonly [number, number]>>>;
  readonly household: readonly { readonly text: string; readonly grams: number }[];
  /** Ids of foods that a statement may print under the same name: "milk" for dry milk (21 CFR 101.4(b)(3) to (12)). */
  readonly mayBe?: readonly string[];
  /** Where the row only stands in for the food, and what is left untold for that. */
  readonly note?: string;
}

export const referenceTable = table as unknown as {
  readonly source: string;
  readonly edition: string;
  readonly foods: readonly ReferenceFood[];
};

const byId: ReadonlyMap<string, ReferenceFood> = new Map(referenceTable.foods.map(food => [food.id, food]));

export function referenceFood(id: string): ReferenceFood | undefined {
  return byId.get(id);
}
