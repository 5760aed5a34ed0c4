/** Why no target is proposed at all. Permanent codes. */
export const assessmentIssueCodes = [
  'under-18',
  'pregnant',
  'breastfeeding',
  'acute-kidney-injury',
  'impossible-value',
  'not-a-day',
  'from-the-future',
  'unit-not-known',
  'unit-in-question',
  'assessment-too-old',
  'value-in-question',
  'wrong-order',
  'not-an-hour',
  'contradiction',
] as const;
export type AssessmentIssueCode = (typeof assessmentIssueCodes)[number];

export const assessmentIssueKinds = ['refusal', 'question'] as const;

/** A refusal says why; a question waits for an answer. Either way there is no target, and nothing is corrected silently. */
export interface AssessmentIssue {
  readonly kind: (typeof assessmentIssueKinds)[number];
  readonly code: AssessmentIssueCode;
  readonly field: string;
  readonly told: string;
  /** The row on which the person can answer that it is right as it stands. */
  readonly answeredBy?: { readonly list: 'labs' | 'weighings'; readonly at: number };
}
