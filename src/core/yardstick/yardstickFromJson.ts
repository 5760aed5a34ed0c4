import { z } from 'zod';
import type { Reading } from '#core/errors.ts';
import { checkJson } from '#core/json/checkJson.ts';
import type { JsonOf } from '#core/json/jsonOf.ts';
import type { FormStep } from '#core/json/presentForm.ts';
import { nutrientKeys } from '#core/quantity/nutrients.ts';
import { isNumberMeasure } from './measures/measureFacts.ts';
import { measureKinds } from './measures/measureKinds.ts';
import { bases, boundSourceKinds, settings, type Yardstick } from './yardstick.ts';

const nutrient = z.enum(nutrientKeys);
const words = z.string().min(1, 'text');
const number = z.number();

const basis = z.enum(bases);

const { nutrient: amount, ...otherKinds } = measureKinds;
const measure = z.discriminatedUnion('kind', [
  amount.schema(z, nutrient),
  ...Object.values(otherKinds).map(kind => kind.schema(z, nutrient)),
]);

const source = z.object({
  kind: z.enum(boundSourceKinds),
  text: words,
});

const test = z
  .object({
    id: words,
    measure,
    basis,
    atMost: number.exactOptional(),
    atLeast: number.exactOptional(),
    below: number.exactOptional(),
    absent: z.literal(true).exactOptional(),
    slack: number.nonnegative().exactOptional(),
    claimRule: z.literal('us-sodium-claim').exactOptional(),
    useEstimates: z.boolean().exactOptional(),
    off: z.boolean().exactOptional(),
    source,
  })
  .refine(one => boundsIn(one).length === 1, 'exactly one of atMost, atLeast, below, absent')
  .refine(
    one => (one.absent === true) !== isNumberMeasure(one.measure),
    '"absent": true for an additive or ingredient, a number for any other measure',
  )
  .refine(
    one => one.absent !== true || one.basis === 'as-eaten' || one.basis === 'on-plate',
    'basis "as-eaten" or "on-plate" for an additive or ingredient',
  )
  .refine(one => one.claimRule === undefined || one.basis === 'per-reference-amount', 'claimRule with basis "per-reference-amount" alone');

const classScale = z.object({
  id: words,
  nutrient,
  basis,
  classes: z
    .array(z.object({ name: words, upTo: number.exactOptional() }))
    .min(2)
    .refine(areAscending, 'classes with ascending upTo, the last one without'),
  source,
});

export const yardstickSchema = z.object({
  id: words,
  title: words,
  purpose: z.string().default(''),
  tests: z.array(test).refine(haveOwnIds, 'tests with an id of their own'),
  classScales: z.array(classScale).default([]).refine(haveOwnIds, 'class scales with an id of their own'),
  settings: z.union([z.literal('any'), z.array(z.enum(settings)).min(1)], {
    error: `"any" or a list of ${settings.join(', ')}`,
  }),
  cautions: z.array(z.string()).default([]),
});

export type YardstickJson = JsonOf<typeof yardstickSchema>;

/** No earlier form has been written yet. */
const steps: readonly FormStep[] = [];

/** Reads a yardstick as docs/formats.md describes it. Without a value when it is not valid; the issues name each place. */
export function yardstickFromJson(value: unknown): Reading<Yardstick | undefined> {
  const checked = checkJson(yardstickSchema, value, steps);
  return { value: checked.ok ? checked.value : undefined, issues: checked.issues };
}

/** A yardstick is its own JSON. */
export function yardstickToJson(yardstick: Yardstick): YardstickJson {
  return yardstick;
}

function boundsIn(one: { atMost?: unknown; atLeast?: unknown; below?: unknown; absent?: unknown }): readonly unknown[] {
  return [one.atMost, one.atLeast, one.below, one.absent].filter(bound => bound !== undefined);
}

function areAscending(classes: readonly { upTo?: number | undefined }[]): boolean {
  return classes.every(({ upTo }, at) => {
    if (at === classes.length - 1) return upTo === undefined;
    const before = classes[at - 1]?.upTo ?? Number.NEGATIVE_INFINITY;
    return upTo !== undefined && upTo > before;
  });
}

function haveOwnIds(list: readonly { id: string }[]): boolean {
  return new Set(list.map(({ id }) => id)).size === list.length;
}
