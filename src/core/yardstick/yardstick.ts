import type { Setting } from '#core/client/setting.ts';
import type { Interval } from '#core/quantity/interval.ts';
import type { Nutrient } from '#core/quantity/nutrients.ts';
import type { Measure } from './measures/measureKinds.ts';

export { type Setting, settings } from '#core/client/setting.ts';
export type { Measure } from './measures/measureKinds.ts';

/** The stated basis of a test: `as-eaten` is the portion of the surveyed food alone, `on-plate` the portion with its companions. */
export const bases = ['per-serving', 'per-100-g', 'per-100-ml', 'per-reference-amount', 'as-eaten', 'on-plate', 'per-day'] as const;
/** The compiler refuses to mix them. */
export type Basis = (typeof bases)[number];

export const boundSourceKinds = [
  'regulation',
  'guideline',
  'paper',
  'common-practice',
  'from-memory',
  'own-table',
  'clinic',
  'prescription',
] as const;

/** Where a bound comes from. `from-memory` and `common-practice` say so on the screen. */
export interface BoundSource {
  readonly kind: (typeof boundSourceKinds)[number];
  readonly text: string;
}

/** One measure against one bound, on a stated basis. Exactly one of atMost, atLeast, below, absent. */
export interface Test {
  readonly id: string;
  readonly measure: Measure;
  readonly basis: Basis;
  readonly atMost?: number;
  readonly atLeast?: number;
  /** Strictly less than: "free of sodium" is under 5 mg. */
  readonly below?: number;
  /** The additive class or ingredient must not be named. */
  readonly absent?: true;
  /** Over, by no more than this, is "nearly". In the measure's unit. */
  readonly slack?: number;
  /** Also judged per 50 g when the reference amount is small (21 CFR 101.61), or per 100 g for meals and main dishes. */
  readonly claimRule?: 'us-sodium-claim';
  /** Estimated amounts may be used, at their safe end. Off unless said. */
  readonly useEstimates?: boolean;
  /** A test that is shown but judged only when the user switches it on (potassium and phosphorus bounds). */
  readonly off?: boolean;
  readonly source: BoundSource;
}

/** Classes of an amount, shown beside the verdict and never a bound: "low", "medium", "high". */
export interface ClassScale {
  readonly id: string;
  readonly nutrient: Nutrient;
  readonly basis: Basis;
  /** Upper ends, inclusive, ascending; the last class has none. */
  readonly classes: readonly { readonly name: string; readonly upTo?: number }[];
  readonly source: BoundSource;
}

export interface Yardstick {
  readonly id: string;
  /** As it reads in a sentence: "low in sodium as eaten". */
  readonly title: string;
  readonly purpose: string;
  readonly tests: readonly Test[];
  readonly classScales: readonly ClassScale[];
  readonly settings: readonly Setting[] | 'any';
  /** Shown with every verdict: what it is not ("not the FDA's low sodium claim"), who decides. */
  readonly cautions: readonly string[];
}

/** In the order in which they are told. */
export const verdictWords = ['fits', 'nearly', 'over', "can't tell"] as const;
export type VerdictWord = (typeof verdictWords)[number];

/** The outcome of one test. */
export interface TestVerdict {
  readonly testId: string;
  readonly verdict: VerdictWord;
  /** What was compared, and what rounding allows; absent when nothing is known. */
  readonly judged?: Interval;
  readonly range?: Interval;
  readonly bound?: number;
  /** Bound minus value for a maximum: positive is to spare, negative is over. */
  readonly margin?: number;
  readonly marginRange?: Interval;
  readonly closeCall: boolean;
  readonly estimated: boolean;
  /** Why nothing can be told, in a few words: "potassium is unknown (not on the label)". Only with "can't tell". */
  readonly reason?: string;
  /** What an absence test found that decides it. Only where it is not "fits". */
  readonly found?: Found;
  /** One sentence with its numbers and the source of the bound. */
  readonly why: string;
}

/** What a label says of something that must not be in the food. */
export interface Found {
  /** The food on the plate whose label it is. */
  readonly food: string;
  /** `possible`: only allowed ("may contain") or hidden; `unread`: no statement to its end; `word-not-known`: silence about the word proves nothing. */
  readonly how: 'named' | 'possible' | 'unread' | 'word-not-known';
  /** As printed, or why nothing can be told. */
  readonly words: string;
}

export interface ShownClass {
  readonly scaleId: string;
  /** "low", or "low or medium" when the range crosses a cut-off; "unknown" when the amount is. */
  readonly name: string;
  readonly why: string;
}

export interface Verdict {
  readonly yardstickId: string;
  readonly verdict: VerdictWord;
  readonly closeCall: boolean;
  readonly estimated: boolean;
  /** The reason of the deciding test: one sentence with its numbers. */
  readonly why: string;
  readonly tests: readonly TestVerdict[];
  readonly classes: readonly ShownClass[];
}
