import { z } from '@hono/zod-openapi';
import { plateSchema, portionSchema } from '#core/plate/plateFromJson.ts';
import { surveyColumnKeys } from '#core/yardstick/surveyColumns.ts';
import { wayInKinds } from '#core/yardstick/wayIn.ts';
import { yardstickSchema } from '#core/yardstick/yardstickFromJson.ts';
import { additiveShort, list, setting, verdictWord } from './bodies.ts';
import { edgeBody } from './edge.ts';

export const surveyRequest = z
  .object({
    category: z.string(),
    /** Id of a plate, or a plate being tried. */
    plate: z.union([z.string(), edgeBody(plateSchema, 'PlateJson')]),
    yardstick: z.union([z.string(), edgeBody(yardstickSchema, 'YardstickJson')]),
    setting: setting.optional(),
    switchedOn: z.array(z.string()).default([]),
    /** In the place of the plate's own portion. */
    portion: portionSchema.optional(),
    /** Further columns to show in each row. */
    columns: z.array(z.enum(surveyColumnKeys)).max(12).default([]),
  })
  .openapi('SurveyRequest');

const surveyRow = z.object({
  foodId: z.string(),
  name: z.string(),
  maker: z.string().exactOptional(),
  verdict: verdictWord,
  closeCall: z.boolean(),
  estimated: z.boolean(),
  /** Energy and sodium of the portion alone, for the plane; null when unknown. */
  energyKcal: z.number().nullable(),
  sodiumMg: z.number().nullable(),
  /** In the order of the request's columns; `low` is to sort by, null when unknown. */
  columns: list(z.object({ text: z.string(), low: z.number().nullable() })),
  /** "10 mg over", "20 mg to spare", "sodium is unknown (not on the label)". */
  margin: z.string(),
  /** Phosphates and potassium salts that count, or may. */
  additives: list(z.object({ class: z.enum(['phosphate', 'potassium']), isCertain: z.boolean() })),
  findings: z.number(),
  recheckOn: z.string().exactOptional(),
});

export const surveyBody = z
  .object({
    counts: z.object({ fits: z.number(), nearly: z.number(), over: z.number(), "can't tell": z.number() }),
    plateTitle: z.string(),
    portionText: z.string(),
    /** What the companions bring, in one sentence. */
    companionsText: z.string(),
    yardstickTitle: z.string(),
    tests: list(z.object({ id: z.string(), text: z.string(), source: z.string(), isOn: z.boolean() })),
    cautions: list(z.string()),
    /** Labels whose unprinted minerals are estimated so far, where the survey shows or judges them. */
    estimating: z.object({ done: z.number(), of: z.number() }).nullable(),
    /**
     * The yardstick's line on the plane of energy (across) and sodium (up), for the portion alone: sodium at most
     * slope × energy + offset; null when the yardstick has no such test.
     */
    rule: z.object({ slope: z.number(), offset: z.number(), slack: z.number() }).nullable(),
    rows: list(surveyRow),
  })
  .openapi('Survey');

export const surveyFoodsRequest = surveyRequest.extend({ foodIds: z.array(z.string()).max(200) });

export const surveyFoodBody = z
  .object({
    foodId: z.string(),
    why: z.string(),
    tests: list(z.object({ testId: z.string(), verdict: verdictWord, why: z.string() })),
    classes: list(z.object({ name: z.string(), why: z.string() })),
    additives: list(additiveShort),
    waysIn: list(z.object({ kind: z.enum(wayInKinds), what: z.string() })),
    noWayIn: z.string().exactOptional(),
  })
  .openapi('SurveyFood');

export const foodPortionsRequest = surveyRequest.omit({ category: true, columns: true }).extend({ foodId: z.string() });

export const foodPortionsBody = z
  .object({
    /** The portions of the slider, smallest first. */
    steps: list(z.object({ grams: z.number(), text: z.string(), verdict: verdictWord, closeCall: z.boolean(), why: z.string() })),
    /** What is said in the place of any portion: a test that no portion can change. */
    noPortion: z.object({ testId: z.string(), verdict: verdictWord, why: z.string() }).exactOptional(),
    /** The largest portion that fits. */
    tippingGrams: z.number().nullable(),
    tippingText: z.string(),
    waysIn: list(z.object({ kind: z.enum(wayInKinds), what: z.string() })),
  })
  .openapi('FoodPortions');
