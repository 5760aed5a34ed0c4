import { z } from 'zod';
import { traced } from './content.ts';
import type { MineralEstimate, NoEstimate } from './minerals.ts';

const words = z.string();
const mg = z.number();
/** Kept by the program for itself: an open end, which JSON writes as null, is open again. */
const interval = z.object({ lo: mg, hi: mg.nullable() }).transform(({ lo, hi }) => ({ lo, hi: hi ?? Number.POSITIVE_INFINITY }));
const range = z.object({ sure: interval, likely: z.object({ lo: mg, mid: mg, hi: mg }) });
const drivers = z.array(z.object({ name: words, mg, share: z.number() }));

const meaning = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('printed'), nutrient: z.enum(traced), side: z.enum(['most', 'least']) }),
  z.object({ kind: z.literal('order'), first: words, second: words }),
  z.object({ kind: z.literal('threshold'), name: words, percent: z.number() }),
  z.object({ kind: z.literal('declared'), name: words, percent: z.number() }),
  z.object({ kind: z.literal('ceiling'), name: words, source: words }),
  z.object({ kind: z.literal('mass') }),
  z.object({ kind: z.literal('moisture') }),
  z.object({ kind: z.literal('tie'), name: words }),
]);

const estimate = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('estimate'),
    servingG: interval,
    phosphorus: range,
    potassium: range,
    addedPhosphorus: range,
    addedPotassium: range,
    absorbedPhosphorus: interval,
    matchedShare: z.number(),
    phosphorusDrivers: drivers,
    potassiumDrivers: drivers,
    limits: z.array(z.object({ name: words, atMostMg: mg, because: words })),
    conflicts: z.array(z.object({ meaning, by: z.number() })),
  }),
  z.object({ kind: z.literal('cannot-be-bounded'), because: words }),
]);

/** A kept estimate; undefined when it is none, so that it is made anew. It belongs to one version of the model and is never brought to another form. */
export function estimateFromJson(json: unknown): MineralEstimate | NoEstimate | undefined {
  return estimate.safeParse(json).data;
}
