import { z } from 'zod';
import type { FoodState } from '#core/label/label.ts';

const text = z.string().min(1);
const grams = z.number().nonnegative();

/** One ingredient: grams in 100 g of everything that goes in, one number a version where the file has versions. One line without grams makes up the 100. */
const lineSchema = z.strictObject({
  kind: z.undefined().exactOptional(),
  grams: z.union([grams, z.array(grams)], 'grams, or one number of grams a version').exactOptional(),
  /** A name in the file of ingredients. */
  of: text,
  /** The words on the label, where they are not the ingredient's own. */
  as: text.exactOptional(),
  /** A function note in brackets: "to preserve color". */
  note: text.exactOptional(),
});

/** Ingredients under one name: "leavening (…)", or after a colon as the last words of the list: "vitamins and minerals: …". */
const groupSchema = z.strictObject({
  kind: z.literal('group'),
  name: text,
  colon: z.literal(true).exactOptional(),
  parts: z.array(lineSchema).min(1),
});

const servingSchema = z.strictObject({
  household: text,
  grams: z.number().positive(),
  milliliters: z.number().positive().exactOptional(),
  perContainer: text.exactOptional(),
});

const states = ['as-packaged', 'as-prepared', 'drained'] as const satisfies readonly FoodState[];
const day = z.iso.date('a day, as 2026-10-14');

/** How a shopper meets the package: on which shelf, with what else on it. */
const soldSchema = z.strictObject({
  /** A key of the file of makers. */
  maker: text,
  /** Five digits that, with the maker's, make the GTIN. */
  itemNumber: z.int().positive().max(99_999),
  /** A key of data/reference-amounts.json. */
  referenceAmount: text,
  /** As packaged when missing. */
  state: z.enum(states).exactOptional(),
  readOn: day,
  readAt: text,
  front: z.array(text).exactOptional(),
  /** The id of the same food with salt. */
  unsaltedVersionOf: text.exactOptional(),
});

/** Why a label is not as it should be, and what a reader of it must notice. */
const oddSchema = z.strictObject({
  /** For people: what is odd, one sentence. */
  why: text,
  /** The audit findings the label must have; none when the oddity is in the food or its words. */
  findings: z.array(text),
  /** Cells printed other than the recipe says, by CSV heading. */
  printed: z.record(z.string(), z.string()).exactOptional(),
  /** Words of the statement printed other than the recipe says. */
  misprint: z.strictObject({ right: text, wrong: text }).exactOptional(),
});

const foodSchema = z.strictObject({
  id: text,
  /** The id when missing. */
  name: text.exactOptional(),
  serving: servingSchema,
  /** Grams of finished food from 100 g of what goes in; the difference is water that left. 100 when missing. */
  yieldG: z.number().positive().exactOptional(),
  items: z
    .array(z.discriminatedUnion('kind', [lineSchema, groupSchema]))
    .min(1)
    .exactOptional(),
  /** In place of items: foods of this file in one carton, equal weights of each. */
  boxes: z.array(text).min(2).exactOptional(),
  /** The allergen line: "milk, soy". */
  allergens: text.exactOptional(),
  /** Zeros are left out of the panel and named in "Not a significant source of". */
  leavesOutZeros: z.literal(true).exactOptional(),
  sold: soldSchema.exactOptional(),
  odd: oddSchema.exactOptional(),
});

/** A file of recipes, as README.md describes it. What must fit together is in recipeFaults.ts. */
export const recipeFileSchema = z.strictObject({
  category: text,
  /** Each food is as many foods: "cola" in the versions first and second is "cola-first" and "cola-second". */
  versions: z.array(text).min(2).exactOptional(),
  foods: z.array(foodSchema).min(1),
});

export type RecipeFile = z.infer<typeof recipeFileSchema>;
export type FoodEntry = z.infer<typeof foodSchema>;
export type LineEntry = z.infer<typeof lineSchema>;
export type ItemEntry = NonNullable<FoodEntry['items']>[number];
export type Serving = z.infer<typeof servingSchema>;
export type SoldEntry = z.infer<typeof soldSchema>;
export type Oddity = z.infer<typeof oddSchema>;
