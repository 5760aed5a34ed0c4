import type { Reading } from '#core/errors.ts';
import { checkJson } from '#core/json/checkJson.ts';
import { type Assessment, type AssessmentJson, assessmentSchema, type Results, type ResultsJson, resultsSchema } from './assessment.ts';

/**
 * Reads an assessment as docs/formats.md describes it. Without a value when it is not valid; the issues name each place. A key
 * that nobody reads is refused as well: "pregnent" left alone would be a pregnancy that nobody sees. What
 * a value can be (a potassium of 55, a day that does not exist) is for `checkAssessment`, which asks or refuses in words.
 */
export function assessmentFromJson(json: unknown): Reading<Assessment | undefined> {
  const checked = checkJson(assessmentSchema, json);
  if (!checked.ok || checked.issues.length > 0) return { value: undefined, issues: checked.issues };
  return { value: checked.value, issues: [] };
}

/** It is kept and sent as it stands. */
export function assessmentToJson(assessment: Assessment): AssessmentJson {
  return assessment;
}

/** Results and weights alone. Refused whole, with the place of each fault. */
export function resultsFromJson(json: unknown): Reading<Results | undefined> {
  const checked = checkJson(resultsSchema, json);
  if (!checked.ok || checked.issues.length > 0) return { value: undefined, issues: checked.issues };
  return { value: checked.value, issues: [] };
}

export function resultsToJson({ labs, weighings }: Results): ResultsJson {
  return { labs, weighings };
}
