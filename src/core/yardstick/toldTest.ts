import { nutrients } from '#core/quantity/nutrients.ts';
import { type Bound, type BoundTest, boundOf } from './bound.ts';
import { decimalsOf, marginText, quantityText } from './figureText.ts';
import type { NumberMeasure } from './measured.ts';
import { sourceText } from './sourceText.ts';
import type { TestVerdict } from './yardstick.ts';

/** A test with all that its sentences repeat for every food, put into words once. */
export interface ToldTest {
  readonly test: BoundTest;
  readonly bound: Bound;
  readonly isMinimum: boolean;
  readonly useEstimates: boolean;
  readonly slack: number;
  /** The unit of the bound, its slack and margin. A difference is told in the unit of its first nutrient, as the trade does. */
  readonly unit: string;
  readonly decimals: number;
  /** "at most 140 mg", "sodium in mg no more than energy in kcal". */
  readonly boundWords: string;
  readonly slackWords: string;
  readonly sourceWords: string;
}

export function toldTest(test: BoundTest): ToldTest {
  const bound = boundOf(test);
  const slack = test.slack ?? 0;
  const unit = unitOf(test.measure);
  return {
    test,
    bound,
    isMinimum: bound.kind === 'atLeast',
    useEstimates: test.useEstimates ?? false,
    slack,
    unit,
    decimals: shownDecimals(test.measure, bound),
    boundWords: boundWords(test.measure, bound),
    slackWords: quantityText(String(slack), unit),
    sourceWords: sourceText(test.source),
  };
}

/** "20 mg to spare", "10 mg over", with a decimal more where the margin has one; undefined where there is no margin. */
export function toldMargin({ isMinimum, unit, decimals }: ToldTest, { verdict, margin }: TestVerdict): string | undefined {
  if (margin === undefined) return undefined;
  const finer = Number.isInteger(margin) ? 0 : 1;
  return marginText(margin, verdict === 'fits', isMinimum, unit, decimals + finer);
}

const limits = { atMost: 'at most', below: 'under', atLeast: 'at least' } as const;

/** A bound in words: "at most 140 mg", "under 10 mg per g", "sodium in mg at most 50 more than energy in kcal". */
function boundWords(measure: NumberMeasure, bound: Bound): string {
  if (measure.kind !== 'difference') return `${limits[bound.kind]} ${quantityText(String(bound.figure), unitOf(measure))}`;
  const [first, second] = [nutrients[measure.nutrient], nutrients[measure.minus]];
  return `${first.name} in ${first.unit} ${differenceWords(bound)} ${second.name} in ${second.unit}`;
}

function differenceWords({ kind, figure }: Bound): string {
  if (kind === 'below') return figure === 0 ? 'less than' : figure > 0 ? `less than ${figure} above` : `more than ${-figure} below`;
  const isMaximum = kind === 'atMost';
  if (figure === 0) return isMaximum ? 'no more than' : 'no less than';
  return `${isMaximum === figure > 0 ? 'at most' : 'at least'} ${Math.abs(figure)} ${figure > 0 ? 'more' : 'less'} than`;
}

function unitOf(measure: NumberMeasure): string {
  if (measure.kind === 'daily-value-percent') return '%';
  const { unit } = nutrients[measure.nutrient];
  return measure.kind === 'ratio' ? `${unit} per ${nutrients[measure.per].unit}` : unit;
}

/** A ratio near 1 needs two decimals, one near 10 does not. */
function shownDecimals(measure: NumberMeasure, { figure }: Bound): number {
  if (measure.kind === 'daily-value-percent') return 0;
  return measure.kind === 'ratio' ? (figure < 10 ? 2 : 1) : decimalsOf(measure.nutrient);
}
