import { type FormStep, isObject, type JsonObject } from '#core/json/presentForm.ts';

/**
 * The form in which a record is kept. Form 1 had no `format` and wrote a range as { lo, hi }, its open end as 9007199254740991, as null or
 * not at all. Form 2 writes [lo, hi], an open end as null, and tells a target held back from one without limit. Form 3 may have more beside it:
 * what a signed target rested on, an assessment that corrects another.
 */
export const recordSteps: readonly FormStep[] = [form2Of, form2 => form2];

function form2Of(record: JsonObject): JsonObject {
  if (!Array.isArray(record.prescriptions)) return record;
  const prescriptions = record.prescriptions.map(one =>
    isObject(one) && Array.isArray(one.targets) ? { ...one, targets: one.targets.map(form2OfTarget) } : one,
  );
  return { ...record, prescriptions };
}

function form2OfTarget(target: unknown): unknown {
  return isObject(target) && isObject(target.range) ? { ...target, range: form2OfRange(target.range) } : target;
}

/** An end that is no number and no sign of openness goes on as it is, and is refused with the rest. */
function form2OfRange({ lo, hi }: JsonObject): readonly unknown[] {
  return [lo, hi === undefined || hi === Number.MAX_SAFE_INTEGER ? null : hi];
}
