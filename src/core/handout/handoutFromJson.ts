import { z } from 'zod';
import { limits, targetItems, targetUnits } from '#core/client/prescription/target.ts';
import type { Reading } from '#core/errors.ts';
import { checkJson, type JsonIssueCode } from '#core/json/checkJson.ts';
import type { TypedOf } from '#core/json/jsonOf.ts';
import { type FormStep, isObject, type JsonObject } from '#core/json/presentForm.ts';
import { isDay } from '#core/quantity/calendarDay.ts';
import { intervalFromJson } from '#core/quantity/interval.ts';
import { intervalSchema } from '#core/quantity/intervalJson.ts';
import { settings } from '#core/yardstick/yardstick.ts';
import { type ClientHandoutDraft, type HandoutDraft, handoutParts, languages, type SignedTarget } from './handout.ts';

const words = z.string().regex(/\S/, 'text');
const day = z.string().refine(isDay, 'a day as yyyy-mm-dd');
const fileName = z
  .string()
  .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, 'small letters, digits and single hyphens')
  .max(80, 'at most 80 characters')
  .refine(
    id => id !== 'index' && !/^(?:con|prn|aux|nul|com\d|lpt\d)$/.test(id),
    'a name that every system can give to a file, and not "index"',
  );

const target = z
  .object({
    item: z.enum(targetItems),
    unit: words,
    range: intervalSchema.exactOptional(),
    limit: z.enum(limits).exactOptional(),
  })
  .refine(({ item, unit }) => unit === targetUnits[item], 'the unit of the target: kcal, g, mg, mL or "named on the label"');

const author = z.object({ name: words, credentials: words.exactOptional() });

/** The longest lines that still leave the fridge page one page in large print (own decision, tried on A4 and Letter). */
const longestCall = 80;
const longestTitle = 90;

const whole = z.object({
  id: fileName,
  language: z.enum(languages).default('en'),
  title: words.max(longestTitle, `at most ${longestTitle} characters`).exactOptional(),
  reader: words.exactOptional(),
  setting: z.enum(settings),
  writtenOn: day,
  author,
  callUs: words.max(longestCall, `at most ${longestCall} characters: it stands on the fridge page`).exactOptional(),
  notes: z.array(words).default([]),
  parts: z.array(z.enum(handoutParts)).default([...handoutParts]),
  categories: z
    .array(
      z.object({
        category: words,
        title: words.exactOptional(),
        plateId: words,
        meal: words.exactOptional(),
        aisle: words.exactOptional(),
        foodAisles: z.record(z.string(), words).default({}),
        leftOut: z.array(words).default([]),
      }),
    )
    .default([]),
  aisleOrder: z.array(words).default([]),
  meals: z
    .array(z.object({ name: words, percent: z.number().positive('more than 0').max(100, 'at most 100') }))
    .max(6, 'at most 6 meals')
    .default([]),
  prescription: z
    .object({
      targets: z.array(target).refine(all => new Set(all.map(({ item }) => item)).size === all.length, 'one target of each item'),
      signed: z.object({ by: words, credentials: words.exactOptional(), on: day }),
    })
    .exactOptional(),
  avoidedFoods: z.array(words).default([]),
  immuneSuppressed: z.boolean().exactOptional(),
  topic: z.object({ yardstickId: words, switchedOn: z.array(words).default([]) }).exactOptional(),
});

export const handoutSchema = whole
  .refine(
    ({ prescription, topic }) => (prescription === undefined) !== (topic === undefined),
    'either "prescription", as signed, for one client, or "topic" with its yardstick',
  )
  .refine(({ meals }) => meals.reduce((sum, { percent }) => sum + percent, 0) <= 100 + 1e-9, 'meals that are at most 100 percent together')
  .refine(
    ({ categories, meals }) =>
      meals.length === 0 || categories.every(({ meal }) => meal === undefined || meals.some(({ name }) => name === meal)),
    'categories whose "meal" is one of "meals"',
  );

/** A handout as it is while its author writes it. */
export type HandoutTyped = TypedOf<typeof handoutSchema>;

/** Form 1 wrote a target's range as { lo, hi }; form 2 writes it as every range is written, [lo, hi]. */
const steps: readonly FormStep[] = [rangesAsPairs];

function rangesAsPairs(json: JsonObject): JsonObject {
  const { prescription } = json;
  if (!isObject(prescription) || !Array.isArray(prescription.targets)) return json;
  const targets = prescription.targets.map(one =>
    isObject(one) && isObject(one.range) ? { ...one, range: [one.range.lo, one.range.hi] } : one,
  );
  return { ...json, prescription: { ...prescription, targets } };
}

/** Reads a handout as docs/formats.md describes it. Without a value when it is not valid; the issues name each place. */
export function handoutFromJson(value: unknown): Reading<HandoutDraft | undefined, JsonIssueCode> {
  const checked = checkJson(handoutSchema, value, steps);
  if (!checked.ok) return { value: undefined, issues: checked.issues };
  const { prescription, ...rest } = checked.value;
  const draft =
    prescription === undefined ? rest : { ...rest, prescription: { ...prescription, targets: prescription.targets.map(signedTarget) } };
  return { value: draft, issues: checked.issues };
}

function signedTarget({ item, range, limit }: z.output<typeof target>): SignedTarget {
  return {
    item,
    unit: targetUnits[item],
    ...(range === undefined ? {} : { range: intervalFromJson(range) }),
    ...(limit === undefined ? {} : { limit }),
  };
}

const clientHandoutSchema = whole.omit({
  setting: true,
  prescription: true,
  avoidedFoods: true,
  immuneSuppressed: true,
  meals: true,
  topic: true,
});

/** Reads what the dietitian writes for a client's handout: the same without what comes from the record. */
export function clientHandoutFromJson(value: unknown): Reading<ClientHandoutDraft | undefined, JsonIssueCode> {
  const checked = checkJson(clientHandoutSchema, value, steps);
  return { value: checked.ok ? checked.value : undefined, issues: checked.issues };
}
