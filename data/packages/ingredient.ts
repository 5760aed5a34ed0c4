import { z } from 'zod';
import { additiveTable } from '#core/additive/additiveTable.ts';

/** What every source of figures has. */
const sureFigures = ['waterG', 'proteinG', 'fatG', 'carbohydrateG', 'phosphorusMg', 'potassiumMg', 'sodiumMg'] as const;

/** What a source may leave open. */
const otherFigures = [
  'saturatedFatG',
  'transFatG',
  'cholesterolMg',
  'fiberG',
  'totalSugarsG',
  'addedSugarsG',
  'vitaminDMcg',
  'calciumMg',
  'ironMg',
] as const;

export type SureFigure = (typeof sureFigures)[number];
export type OtherFigure = (typeof otherFigures)[number];

/** What 100 g of one thing hold; an absent figure is unknown. */
export type Figures = Readonly<Record<SureFigure, number> & Partial<Record<OtherFigure, number>>>;

const text = z.string().min(1);
const amount = z.number().nonnegative();
const ndb = z.string().regex(/^\d{5}$/, 'five digits of a row of SR28');
const additiveIds: ReadonlySet<string> = new Set(additiveTable.map(({ id }) => id));

/** Where figures come from: a row of SR28, a formula, our own; a row of data/additives.json; water; or what brings nothing that is traced. */
const source = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('sr28'),
    ndb,
    /** Another row of the same food, for the cells that the row itself leaves empty (mostly total sugars). */
    emptyCellsFrom: ndb.exactOptional(),
    /** What the row is used for, where SR28 does not have the thing itself. */
    standsInFor: text.exactOptional(),
  }),
  z.strictObject({ kind: z.literal('formula'), formula: text }),
  z.strictObject({ kind: z.literal('own'), why: text }),
  z.strictObject({ kind: z.literal('additive'), id: text.refine(id => additiveIds.has(id), 'an id of data/additives.json') }),
  z.strictObject({ kind: z.literal('water') }),
  z.strictObject({ kind: z.literal('nothing') }),
]);

const per100G = z.strictObject({
  waterG: amount,
  proteinG: amount,
  fatG: amount,
  saturatedFatG: amount,
  transFatG: amount,
  cholesterolMg: amount,
  carbohydrateG: amount,
  fiberG: amount,
  totalSugarsG: amount,
  addedSugarsG: amount,
  vitaminDMcg: amount,
  calciumMg: amount,
  ironMg: amount,
  potassiumMg: amount,
  phosphorusMg: amount,
  sodiumMg: amount,
});

/** Something that goes into recipes: the words of the label, and what 100 g of it hold, written here or looked up in the source. */
const ingredientSchema = z.strictObject({
  printed: text,
  source,
  per100G: per100G.exactOptional(),
  /** Why a figure that the source lacks is ours. */
  ownFigures: z.partialRecord(per100G.keyof(), text).exactOptional(),
});

/** A file of ingredients, each by the name that recipes call it. */
export const ingredientsSchema = z.record(z.string(), ingredientSchema);

export type Ingredient = z.infer<typeof ingredientSchema>;
export type Ingredients = z.infer<typeof ingredientsSchema>;

/** Figures one by one; what `other` leaves open stays unknown. */
export function figuresFrom(sure: (figure: SureFigure) => number, other: (figure: OtherFigure) => number | undefined): Figures {
  const others: Partial<Record<OtherFigure, number>> = {};
  for (const figure of otherFigures) {
    const found = other(figure);
    if (found !== undefined) others[figure] = found;
  }
  return {
    waterG: sure('waterG'),
    proteinG: sure('proteinG'),
    fatG: sure('fatG'),
    carbohydrateG: sure('carbohydrateG'),
    phosphorusMg: sure('phosphorusMg'),
    potassiumMg: sure('potassiumMg'),
    sodiumMg: sure('sodiumMg'),
    ...others,
  };
}

/** How the figures of an ingredient are found. */
export type FiguresOf = (ingredient: Ingredient) => Figures;

/** @throws RangeError when the file of ingredients does not hold them. */
export function writtenFigures(ingredient: Ingredient): Figures {
  if (ingredient.per100G === undefined) throw new RangeError(`${ingredient.printed}: no figures are written`);
  return ingredient.per100G;
}
