/** Why no target is proposed at all. Permanent codes. */
export type BarCode =
  | 'under-18'
  | 'pregnant'
  | 'breastfeeding'
  | 'acute-kidney-injury'
  | 'impossible-value'
  | 'not-a-day'
  | 'from-the-future'
  | 'unit-not-known'
  | 'unit-in-question'
  | 'assessment-too-old'
  | 'value-in-question'
  | 'wrong-order'
  | 'not-an-hour'
  | 'contradiction';

/** A refusal says why; a question waits for an answer. Either way there is no target, and nothing is corrected silently. */
export interface Bar {
  readonly kind: 'refusal' | 'question';
  readonly code: BarCode;
  readonly field: string;
  readonly told: string;
  /** The row on which the person can answer that it is right as it stands. */
  readonly answeredBy?: { readonly list: 'labs' | 'weighings'; readonly at: number };
}
