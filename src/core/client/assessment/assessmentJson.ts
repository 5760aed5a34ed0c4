import type { Reading } from '#core/errors.ts';
import { readWhole } from '#core/json/readWhole.ts';
import { type Assessment, type AssessmentJson, assessmentSchema, type Results, resultsSchema } from './assessment.ts';

/**
 * Reads an assessment as docs/formats.md describes it. Without a value when it is not valid; the issues name each place. A key
 * that nobody reads is refused as well: "pregnent" left alone would be a pregnancy that nobody sees. What
 * a value can be (a potassium of 55, a day that does not exist) is for `checkAssessment`, which asks or refuses in words.
 */
export function assessmentFromJson(json: unknown): Reading<Assessment | undefined> {
  return readWhole(assessmentSchema, json);
}

/** It is kept and sent as it stands. */
export function assessmentToJson(assessment: Assessment): AssessmentJson {
  return assessment;
}

/** Results and weights alone. */
export function resultsFromJson(json: unknown): Reading<Results | undefined> {
  return readWhole(resultsSchema, json);
}
