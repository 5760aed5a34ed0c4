import { unknownReasonText } from '#core/quantity/amount.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import type { OnBasis } from './basis.ts';
import { type BoundTest, boundOf } from './bound.ts';
import { marginRangeText, marginText, rangeText } from './figureText.ts';
import { type Measured, type NumberMeasure, nutrientsOf } from './measured.ts';
import { sourceText } from './sourceText.ts';
import type { VerdictWord } from './yardstick.ts';

interface Outcome {
  readonly verdict: VerdictWord;
  readonly margin: number;
  readonly marginRange: Interval;
  readonly closeCall: boolean;
}

/**
 * The reason of a verdict in one sentence: "Sodium 345 mg against energy 350 kcal on the plate, sodium mg − energy kcal
 * at most 0: 5 mg to spare; rounding: 20 mg to spare … 10 mg over (common practice, no source)."
 */
export function boundSentence(test: BoundTest, on: OnBasis, value: Measured, outcome: Outcome): string {
  const { unit, decimals } = scaleOf(test.measure);
  const isMinimum = test.atLeast !== undefined;
  const distance = marginText(outcome.margin, outcome.verdict === 'fits', isMinimum, unit, decimals);
  const atLeast = value.missing.length > 0 ? 'at least ' : '';
  const slack = outcome.verdict === 'nearly' ? `, within the slack of ${test.slack} ${unit}` : '';
  const rounding = outcome.closeCall ? `; rounding: ${marginRangeText(outcome.marginRange, isMinimum, unit, decimals)}` : '';
  return `${subjectText(test, value)} ${on.words}, ${boundText(test)}: ${atLeast}${distance}${slack}${rounding}${noteText(test, on, value)} (${sourceText(test.source)}).`;
}

/** "Can't tell: potassium of Beef is unknown (not on the label); at most 200 mg as eaten (…)." */
export function cannotTellSentence(test: BoundTest, on: OnBasis, value: Measured): string {
  const against = `${boundText(test)} ${on.words} (${sourceText(test.source)}).`;
  if (value.notDefined) return `Can't tell: ${notDefinedText(test.measure)}; ${against}`;
  if (value.missing.length === 0) return `Can't tell: ${subjectText(test, value)} has no known limit; ${against}`;
  const known = value.judged === undefined ? '' : `; known so far: ${lowerFirst(subjectText(test, value))}`;
  return `Can't tell: ${missingText(value)}${known}; ${against}`;
}

function subjectText(test: BoundTest, { totals, judged, estimated }: Measured): string {
  const [first, second] = nutrientsOf(test.measure);
  const name = nutrients[first].name;
  const subject = estimated ? `Estimated ${name}` : name.charAt(0).toUpperCase() + name.slice(1);
  const amount = amountText(first, totals[0].judged);
  if (test.measure.kind === 'daily-value-percent' && judged)
    return `${subject} ${rangeText(judged, '% of the Daily Value', 1)} (${amount})`;
  if (second === undefined || totals[1] === undefined) return `${subject} ${amount}`;
  const other = `${nutrients[second].name} ${amountText(second, totals[1].judged)}`;
  if (test.measure.kind === 'difference') return `${subject} ${amount} against ${other}`;
  const ratio = judged ? ` is ${rangeText(judged, scaleOf(test.measure).unit, 2)}` : '';
  return `${subject} ${amount} to ${other}${ratio}`;
}

function boundText(test: BoundTest): string {
  const { kind, figure } = boundOf(test);
  const limit = `${kind === 'atMost' ? 'at most' : kind === 'below' ? 'under' : 'at least'} ${figure}`;
  if (test.measure.kind !== 'difference') return `${limit} ${scaleOf(test.measure).unit}`;
  const { nutrient, minus } = test.measure;
  return `${nutrients[nutrient].name} ${nutrients[nutrient].unit} − ${nutrients[minus].name} ${nutrients[minus].unit} ${limit}`;
}

function noteText(test: BoundTest, on: OnBasis, value: Measured): string {
  const missing = value.missing.length > 0 ? `, and ${missingText(value)}` : '';
  if (value.judged === undefined || value.judged.lo === value.judged.hi) return missing;
  const end = test.atLeast === undefined ? 'high' : 'low';
  if (value.estimated) return `; judged at the ${end} end of the estimate${missing}`;
  const printed = nutrientsOf(test.measure).flatMap(nutrient =>
    on.labels.map(label => label.asPrinted[nutrient]).filter(words => words !== undefined),
  );
  const words = printed.length > 0 ? `what the label prints as “${printed.join('”, “')}”` : 'a printed figure that stands for a range';
  return `; judged at the ${end} end of ${words}${missing}`;
}

function missingText({ missing }: Measured): string {
  return missing
    .map(({ nutrient, of, reason }) => `${nutrients[nutrient].name} of ${of} is unknown (${unknownReasonText[reason]})`)
    .join(', ');
}

function notDefinedText(what: NumberMeasure): string {
  if (what.kind === 'ratio')
    return `${nutrients[what.nutrient].name} to ${nutrients[what.per].name} is not defined at zero ${nutrients[what.per].name}`;
  return `${nutrients[what.nutrient].name} has no Daily Value`;
}

function amountText(nutrient: Nutrient, judged: Interval): string {
  return rangeText(judged, nutrients[nutrient].unit, 1);
}

/** The unit of a measure and the decimals it is shown with. A difference is told in the unit of its first nutrient, as the trade does. */
export function scaleOf(what: NumberMeasure): { readonly unit: string; readonly decimals: number } {
  if (what.kind === 'daily-value-percent') return { unit: '%', decimals: 1 };
  const { unit } = nutrients[what.nutrient];
  return what.kind === 'ratio' ? { unit: `${unit} per ${nutrients[what.per].unit}`, decimals: 2 } : { unit, decimals: 1 };
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
