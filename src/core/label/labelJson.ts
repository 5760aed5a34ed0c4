import { z } from 'zod';
import { isDay } from '#core/quantity/calendarDay.ts';
import { panelKeys } from './panelKeys.ts';

/** Whose law the panel was printed under: it decides rounding, Daily Values and what "carbohydrate" holds. */
export const markets = ['us', 'ca', 'eu', 'uk'] as const;
/** What quantity the panel's figures are for. */
export const panelBases = ['per-serving', 'per-100-g', 'per-100-ml'] as const;
/** The state of the food that a column describes. */
export const foodStates = ['as-packaged', 'as-prepared', 'drained'] as const;

const oneOf = <Word extends string>(words: readonly [Word, ...Word[]]) => z.enum(words, { error: `one of ${words.join(', ')}` });
/**
 * As long as a cell of a spreadsheet can be (Excel specifications and limits, "Total number of characters that a cell can contain"); ten times
 * the longest statement on a package. A statement of megabytes would be read for minutes.
 */
export const longestPrintedText = 32_767;

const text = z.string({ error: 'text' }).max(longestPrintedText, { error: `at most ${longestPrintedText} characters` });
const figure = z.union([z.number(), z.string().max(200)], { error: 'a number, or the words as printed' });
const day = text.refine(isDay, { error: 'a day, such as 2026-10-14' });

const panel = z.partialRecord(z.enum(panelKeys), figure);

const serving = z.object({
  household: text.exactOptional(),
  grams: figure.exactOptional(),
  milliliters: figure.exactOptional(),
  perContainer: figure.exactOptional(),
});

const column = z.object({
  basis: oneOf(panelBases).exactOptional(),
  state: oneOf(foodStates).exactOptional(),
  /** Only when it differs from the label's own serving ("per package"). */
  serving: serving.exactOptional(),
  panel,
});

const referenceAmount = z.union(
  [
    z.string(),
    z.object({
      grams: z.number().positive().exactOptional(),
      milliliters: z.number().positive().exactOptional(),
      kind: z.enum(['individual', 'main-dish', 'meal']).exactOptional(),
    }),
  ],
  { error: 'a key of the reference amounts, or { "grams": 55 }' },
);

/** Label JSON, docs/formats.md: what a package said, as it is typed, sent and kept. `labelFromJson` reads it, forgiving part by part. */
export const labelSchema = z.object({
  id: text.exactOptional(),
  name: text.exactOptional(),
  maker: text.exactOptional(),
  category: text.exactOptional(),
  gtin: text.exactOptional(),
  readOn: day.exactOptional(),
  readAt: text.exactOptional(),
  market: oneOf(markets).exactOptional(),
  serving: serving.exactOptional(),
  basis: oneOf(panelBases).exactOptional(),
  state: oneOf(foodStates).exactOptional(),
  front: z.array(text).exactOptional(),
  panel,
  notSignificantSourceOf: text.exactOptional(),
  otherColumns: z.array(column).exactOptional(),
  statement: text.exactOptional(),
  referenceAmount: referenceAmount.exactOptional(),
  unsaltedVersionOf: text.exactOptional(),
});

export type LabelJson = z.input<typeof labelSchema>;

/** The keys of each part, and how its texts and figures are checked. */
export const labelShape = labelSchema.shape;
export const servingShape = serving.shape;
export const columnShape = column.shape;
export const figureSchema = figure;
export const textSchema = text;
