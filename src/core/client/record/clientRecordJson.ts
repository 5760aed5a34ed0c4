import { z } from 'zod';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { assessmentFromJson } from '#core/client/assessment/assessmentJson.ts';
import { limits, targetItems, targetUnits } from '#core/client/prescription/target.ts';
import { weightBasisIds } from '#core/client/states/weightBasis.ts';
import { Fault } from '#core/errors.ts';
import { intervalFromJson, intervalToJson } from '#core/quantity/interval.ts';
import { type AddedResults, type ClientRecord, type DecidedTarget, decidedFroms, decidedKinds, type Prescription } from './record.ts';

/**
 * The form in which a record is kept. Form 1 had no `format` and wrote a range as { lo, hi }, its open end as 9007199254740991, as null or
 * not at all. Form 2 writes [lo, hi], an open end as null, and tells a target held back from one without limit.
 */
export const recordFormat = 2;

export type ClientRecordJson = Readonly<Record<string, unknown>> & { readonly id: string; readonly version: number };

const words = z.string();
const end = z.number().nonnegative();
const range = z.tuple([end, end.nullable()]).refine(([lo, hi]) => hi === null || lo <= hi);

const decided = z
  .strictObject({
    item: z.enum(targetItems),
    unit: words,
    kind: z.enum(decidedKinds).exactOptional(),
    range: range.exactOptional(),
    limit: z.enum(limits).exactOptional(),
    from: z.enum(decidedFroms),
    reason: words.exactOptional(),
    says: words,
  })
  .refine(({ item, unit }) => unit === targetUnits[item])
  .refine(one => one.kind === undefined || (one.kind === 'bounded') === (one.range !== undefined));

const prescription = z.strictObject({
  id: words,
  assessmentId: words,
  weightBasis: z.enum(weightBasisIds).exactOptional(),
  targets: z.array(decided),
  signed: z.strictObject({ by: words, credentials: words, at: words }),
  supersedes: words.exactOptional(),
});

const record = z.strictObject({
  format: z.literal(recordFormat),
  id: words,
  version: z.number(),
  name: words,
  isDemo: z.boolean(),
  assessments: z.array(z.strictObject({ id: words, assessment: z.unknown() })),
  addedResults: z
    .array(z.strictObject({ id: words, on: words, assessmentId: words.exactOptional(), labs: z.unknown(), weighings: z.unknown() }))
    .exactOptional(),
  prescriptions: z.array(prescription),
  contacts: z.array(
    z.strictObject({ cautionId: words, about: words.exactOptional(), told: words, on: words, at: words, note: words.exactOptional() }),
  ),
  mealPattern: z.array(z.strictObject({ name: words, percent: z.number() })).exactOptional(),
  handout: z.record(z.string(), z.unknown()).exactOptional(),
});

/**
 * A kept record, of whichever form. Whole or not at all: a key that nobody reads would be lost with the next change, so it is refused too.
 * @throws Fault client-record-damaged, which tells nothing of the client
 */
export function clientRecordFromJson(json: unknown): ClientRecord {
  const read = record.safeParse(upgraded(json));
  if (!read.success) throw damaged();
  const { format: _, assessments, addedResults, prescriptions, ...rest } = read.data;
  return {
    ...rest,
    assessments: assessments.map(({ id, assessment }) => ({ id, assessment: assessmentOf(assessment) })),
    ...(addedResults === undefined ? {} : { addedResults: addedResults.map(resultsOf) }),
    prescriptions: prescriptions.map(
      (one): Prescription => ({
        ...one,
        targets: one.targets.map(({ range: kept, ...target }): DecidedTarget => {
          const told = { ...target, unit: targetUnits[target.item] };
          return kept === undefined ? told : { ...told, range: intervalFromJson(kept) };
        }),
      }),
    ),
  };
}

export function clientRecordToJson(kept: ClientRecord): ClientRecordJson {
  return {
    ...kept,
    format: recordFormat,
    prescriptions: kept.prescriptions.map(one => ({
      ...one,
      targets: one.targets.map(({ range: given, ...target }) =>
        given === undefined ? target : { ...target, range: intervalToJson(given) },
      ),
    })),
  };
}

function damaged(): Fault {
  return new Fault('client-record-damaged', 'What is kept is no whole client record.');
}

function assessmentOf(json: unknown): Assessment {
  const { value } = assessmentFromJson(json);
  if (value === undefined) throw damaged();
  return value;
}

/** Results and weights alone are read as those of an assessment that tells nothing else. */
function resultsOf({
  id,
  on,
  assessmentId,
  labs,
  weighings,
}: {
  readonly id: string;
  readonly on: string;
  readonly assessmentId?: string;
  labs: unknown;
  weighings: unknown;
}): AddedResults {
  const none = { conditions: [], medicines: [], supplements: [], symptoms: [], allergies: [], avoidedFoods: [], goals: [] };
  const person = { on, sex: 'female', age: { years: 0 }, treatment: { setting: 'ckd-not-on-dialysis' }, diabetes: false };
  const read = assessmentOf({ ...person, ...none, labs, weighings });
  return { id, on, ...(assessmentId === undefined ? {} : { assessmentId }), labs: read.labs, weighings: read.weighings };
}

function upgraded(json: unknown): unknown {
  if (!isObject(json) || 'format' in json || !Array.isArray(json.prescriptions)) return json;
  const prescriptions = json.prescriptions.map(one =>
    isObject(one) && Array.isArray(one.targets) ? { ...one, targets: one.targets.map(upgradedTarget) } : one,
  );
  return { ...json, format: recordFormat, prescriptions };
}

function upgradedTarget(target: unknown): unknown {
  return isObject(target) && isObject(target.range) ? { ...target, range: fromForm1(target.range) } : target;
}

/** An end that is no number and no sign of openness goes on as it is, and is refused with the rest. */
function fromForm1({ lo, hi }: Readonly<Record<string, unknown>>): readonly unknown[] {
  return [lo, hi === undefined || hi === Number.MAX_SAFE_INTEGER ? null : hi];
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
