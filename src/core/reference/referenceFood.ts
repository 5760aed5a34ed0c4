import { z } from 'zod';
import table from '#data/referenceFoods.json' with { type: 'json' };

/** What a reference food tells of 100 g. Water is in grams here, as the table weighs it. */
export const referenceNutrients = [
  'waterG',
  'energyKcal',
  'proteinG',
  'fatG',
  'saturatedFatG',
  'cholesterolMg',
  'carbohydrateG',
  'fiberG',
  'totalSugarsG',
  'alcoholG',
  'calciumMg',
  'ironMg',
  'magnesiumMg',
  'phosphorusMg',
  'potassiumMg',
  'sodiumMg',
] as const;
export type ReferenceNutrient = (typeof referenceNutrients)[number];

/** How the body takes up its phosphorus: bound as phytate, animal, added as a salt, hardly any there, or nobody knows. */
const phosphorusKinds = ['plant', 'animal', 'inorganic', 'none', 'unknown'] as const;

/**
 * A food or ingredient of the composition table (data/referenceFoods.json, from USDA SR28). Whole milk holds 84 mg of
 * phosphorus in 100 g: `referenceFood('whole-milk')?.per100G.phosphorusMg`.
 */
const referenceFoodSchema = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    /** Other names that US statements print for it, lower case. */
    aliases: z.array(z.string()).readonly(),
    /** Numbers of its rows (SR28's in our own table): the first gives the figures, all of them the spread. */
    ndb: z.array(z.string()).readonly(),
    group: z.string(),
    phosphorusKind: z.enum(phosphorusKinds),
    /** Null is unknown, never zero. */
    per100G: z.record(z.enum(referenceNutrients), z.number().nonnegative().nullable()).readonly(),
    /** Lowest and highest figure of its rows; empty where it has one row. */
    spread: z.partialRecord(z.enum(referenceNutrients), z.tuple([z.number(), z.number()]).readonly()).readonly(),
    household: z.array(z.object({ text: z.string(), grams: z.number().positive() }).readonly()).readonly(),
    /** Ids of foods that a statement may print under the same name: "milk" for dry milk (21 CFR 101.4(b)(3) to (12)). */
    mayBe: z.array(z.string()).readonly().exactOptional(),
    /** Where the row only stands in for the food, and what is left untold for that. */
    note: z.string().exactOptional(),
  })
  .readonly();

export type ReferenceFood = z.output<typeof referenceFoodSchema>;

export const referenceTable = z
  .object({ source: z.string(), edition: z.string(), foods: z.array(referenceFoodSchema).readonly() })
  .readonly()
  .parse(table);

const byId: ReadonlyMap<string, ReferenceFood> = new Map(referenceTable.foods.map(food => [food.id, food]));

export function referenceFood(id: string): ReferenceFood | undefined {
  return byId.get(id);
}
