import { z } from '@hono/zod-openapi';
import { labelSchema } from '#core/label/labelJson.ts';
import { amountSources } from '#core/quantity/amount.ts';
import { nutrientKeys } from '#core/quantity/nutrients.ts';
import { additiveShort, issues, list, range } from './bodies.ts';
import { edgeAnswer } from './edge.ts';

export const foodShort = z
  .object({
    id: z.string(),
    name: z.string(),
    maker: z.string().exactOptional(),
    category: z.string().exactOptional(),
    gtin: z.string().exactOptional(),
    isDemo: z.boolean(),
    version: z.number(),
    labels: z.number(),
    readOn: z.string().exactOptional(),
    readAt: z.string().exactOptional(),
    recheckOn: z.string().exactOptional(),
    servingText: z.string().exactOptional(),
    energyKcal: z.number().nullable(),
    sodiumMg: z.number().nullable(),
    additives: list(additiveShort),
    statementRead: z.boolean(),
    findings: z.number(),
  })
  .openapi('FoodShort');

const additiveFull = additiveShort.extend({
  id: z.string(),
  ins: z.string().nullable(),
  found: z.string(),
  start: z.number(),
  end: z.number(),
  path: list(z.string()),
  why: z.string(),
});

const findingBody = z.object({ code: z.string(), about: z.string(), message: z.string(), source: z.string() });

/** One nutrient as a screen shows it: figures are rounded outward already, words are ready to print. */
const amountShown = z.object({
  nutrient: z.enum(nutrientKeys),
  name: z.string(),
  unit: z.string(),
  /** The words on the package. */
  asPrinted: z.string().exactOptional(),
  printed: z.number().exactOptional(),
  range: range.exactOptional(),
  source: z.enum(amountSources).exactOptional(),
  /** "225 – 235 mg", "not on the label". */
  text: z.string(),
  dailyValuePercent: z.number().exactOptional(),
});

export const readLabelBody = z
  .object({
    servingText: z.string().exactOptional(),
    amounts: list(amountShown),
    per100G: list(amountShown),
    additives: list(additiveFull),
    statementRead: z.boolean(),
    findings: list(findingBody),
    issues,
  })
  .openapi('ReadLabel');

const labelBody = z
  .object({
    id: z.string(),
    kind: z.enum(['read', 'correction']),
    correctsLabelId: z.string().exactOptional(),
    correctedBy: z.string().exactOptional(),
    reason: z.string().exactOptional(),
    withdrawn: z.object({ reason: z.string(), at: z.string() }).exactOptional(),
    addedAt: z.string(),
    recheckOn: z.string().exactOptional(),
    photoIds: list(z.string()),
    printed: edgeAnswer(labelSchema, 'LabelJson'),
    read: readLabelBody,
    /** Against the label before it; absent for the first. Sentences ready to show. */
    changes: z.object({ outcome: z.enum(['same', 'reprinted', 'changed']), sentences: list(z.string()) }).exactOptional(),
    stands: z.boolean(),
  })
  .openapi('Label');

/** Both ends of a range that has them. */
const ends = z.tuple([z.number(), z.number()]).readonly();

const mineralShown = z.object({
  /** Between which ends it surely lies. */
  sureMg: ends,
  /** 5 %, 50 % and 95 % of the recipes drawn. */
  likelyMg: z.tuple([z.number(), z.number(), z.number()]),
});

export const mineralsBody = z
  .union([
    z.object({ kind: z.literal('cannot-be-bounded'), because: z.string() }),
    z.object({
      kind: z.literal('estimate'),
      servingText: z.string(),
      /** Per serving; `added` is the part that additives bring. */
      minerals: list(mineralShown.extend({ name: z.string(), isPrinted: z.boolean(), per100G: mineralShown, added: mineralShown })),
      absorbedPhosphorusMg: ends,
      sentences: list(z.string()),
      question: z.string(),
      caution: z.string(),
      checked: z.string(),
    }),
  ])
  .openapi('Minerals');

export const foodBody = foodShort
  .extend({
    densityGPerMl: z.number().exactOptional(),
    gramsPerMeasure: z.record(z.string(), z.number()).readonly().exactOptional(),
    history: list(labelBody),
    plates: list(z.string()),
  })
  .openapi('Food');
