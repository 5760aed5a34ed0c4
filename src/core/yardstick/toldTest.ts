import { nutrients } from '#core/quantity/nutrients.ts';
import { type Bound, type BoundTest, boundOf } from './bound.ts';
import type { NumberMeasure } from './measured.ts';
import { sourceText } from './sourceText.ts';

/** A test with all that its sentences repeat for every food, put into words once. */
export interface ToldTest {
  readonly test: BoundTest;
  readonly bound: Bound;
  readonly isMinimum: boolean;
  readonly useEstimates: boolean;
  readonly slack: number;
  readonly unit: string;
  readonly decimals: number;
  /** "at most 140 mg", "sodium mg − energy kcal at most 0". */
  readonly boundWords: string;
  readonly sourceWords: string;
}

export function toldTest(test: BoundTest): ToldTest {
  const bound = boundOf(test);
  return {
    test,
    bound,
    isMinimum: bound.kind === 'atLeast',
    useEstimates: test.useEstimates ?? false,
    slack: test.slack ?? 0,
    ...scaleOf(test.measure),
    boundWords: boundWords(test.measure, bound),
    sourceWords: sourceText(test.source),
  };
}

const limits = { atMost: 'at most', below: 'under', atLeast: 'at least' } as const;

function boundWords(measure: NumberMeasure, { kind, figure }: Bound): string {
  const limit = `${limits[kind]} ${figure}`;
  if (measure.kind !== 'difference') return `${limit} ${scaleOf(measure).unit}`;
  const { nutrient, minus } = measure;
  return `${nutrients[nutrient].name} ${nutrients[nutrient].unit} − ${nutrients[minus].name} ${nutrients[minus].unit} ${limit}`;
}

/** The unit of a measure and the decimals it is shown with. A difference is told in the unit of its first nutrient, as the trade does. */
function scaleOf(measure: NumberMeasure): { readonly unit: string; readonly decimals: number } {
  if (measure.kind === 'daily-value-percent') return { unit: '%', decimals: 1 };
  const { unit } = nutrients[measure.nutrient];
  return measure.kind === 'ratio' ? { unit: `${unit} per ${nutrients[measure.per].unit}`, decimals: 2 } : { unit, decimals: 1 };
}
