import { z } from '@hono/zod-openapi';
import { nutrientKeys } from '#core/quantity/nutrients.ts';
import { verdictWord } from './bodies.ts';

/** The shelf judged for one client. */
export const fitsBody = z
  .object({
    meal: z.string(),
    tests: z.array(z.string()),
    /** What a row tells amounts of, what matters most for this client first. */
    nutrients: z.array(z.object({ nutrient: z.enum(nutrientKeys), title: z.string(), isJudged: z.boolean() })),
    /** What is avoided has no verdict, and is counted apart. */
    counts: z.object({ fits: z.number(), nearly: z.number(), over: z.number(), "can't tell": z.number(), avoided: z.number() }),
    /** Signed minerals that labels do not tell: for how many of the foods. */
    notTold: z.array(z.object({ mineral: z.enum(['phosphorus', 'potassium']), foods: z.number(), of: z.number(), words: z.string() })),
    rows: z.array(
      z.object({
        foodId: z.string(),
        name: z.string(),
        maker: z.string().optional(),
        category: z.string().optional(),
        plate: z.string(),
        /** Where it stands among all: what fits, by the client's own reasons, first. */
        place: z.number(),
        verdict: verdictWord,
        /** Said in the place of the verdict. */
        avoided: z.enum(['allergen', 'avoided']).optional(),
        closeCall: z.boolean(),
        estimated: z.boolean(),
        /** The whole portion, less of it, no portion, ask first, or never: then no amount is told. */
        offer: z.enum(['portion', 'less', 'none', 'ask', 'never']),
        why: z.string(),
        /** What stands beside the food wherever it is listed. */
        marks: z.array(z.string()),
        /** Which figure or word would settle what the label does not tell. */
        settles: z.string().optional(),
        /** "counts as 1 of 5 cups", where fluid was signed. */
        fluid: z.string().optional(),
        /** On the whole plate, in the order of `nutrients`; what is not known is sorted by nothing. */
        amounts: z.array(z.object({ text: z.string(), sortBy: z.number().nullable() })),
        /** The smallest room under a bound as a part of the bound. */
        margin: z.number().nullable(),
        /** The gravest first. */
        reasons: z.array(
          z.object({
            kind: z.enum(['allergen', 'avoided', 'additive', 'nutrient', 'mineral-not-told', 'unsafe']),
            testId: z.string().optional(),
            kin: z.string().optional(),
            presence: z.enum(['named', 'possible', 'unread', 'word-not-known', 'none-named']).optional(),
            text: z.string(),
          }),
        ),
        inMeal: z.string(),
        inDay: z.string(),
      }),
    ),
    toAsk: z.array(z.string()),
    none: z.string().optional(),
  })
  .openapi('WhatFits');
