import { unknownReasonText } from '#core/quantity/amount.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import type { OnBasis } from './basis.ts';
import { marginRangeText, marginText, rangeText } from './figureText.ts';
import { type Measured, type NumberMeasure, nutrientsOf } from './measured.ts';
import type { ToldTest } from './toldTest.ts';
import type { VerdictWord } from './yardstick.ts';

interface Outcome {
  readonly verdict: VerdictWord;
  readonly margin: number;
  readonly marginRange: Interval;
  readonly closeCall: boolean;
}

/**
 * The reason of a verdict in one sentence: "Sodium 345 mg against energy 350 kcal on the plate: 5 mg to spare; rounding:
 * 20 mg to spare … 10 mg over (common practice, no source)."
 */
export function boundSentence(told: ToldTest, on: OnBasis, value: Measured, outcome: Outcome): string {
  const { unit, decimals, isMinimum } = told;
  const distance = marginText(outcome.margin, outcome.verdict === 'fits', isMinimum, unit, decimals);
  const atLeast = value.missing.length > 0 ? 'at least ' : '';
  const slack = outcome.verdict === 'nearly' ? `, within the slack of ${told.slack} ${unit}` : '';
  const rounding = outcome.closeCall ? `; rounding: ${marginRangeText(outcome.marginRange, isMinimum, unit, decimals)}` : '';
  // "sodium against energy" says a bound of 0 already: the one is to be no more than the other.
  const bound = told.test.measure.kind === 'difference' && told.test.atMost === 0 ? '' : `, ${told.boundWords}`;
  return `${subjectText(told, value)} ${on.words}${bound}: ${atLeast}${distance}${slack}${rounding}${noteText(told, on, value)} (${told.sourceWords}).`;
}

/** "Can't tell: potassium of Beef is unknown (not on the label); at most 200 mg as eaten (…)." */
export function cannotTellSentence(told: ToldTest, on: OnBasis, value: Measured): string {
  const against = `${told.boundWords} ${on.words} (${told.sourceWords}).`;
  if (value.notDefined) return `Can't tell: ${notDefinedText(told.test.measure)}; ${against}`;
  if (value.missing.length === 0) return `Can't tell: ${subjectText(told, value)} has no known limit; ${against}`;
  const known = value.judged === undefined ? '' : `; known so far: ${lowerFirst(subjectText(told, value))}`;
  return `Can't tell: ${missingText(value)}${known}; ${against}`;
}

function subjectText({ test: { measure }, unit }: ToldTest, { totals, judged, estimated }: Measured): string {
  const [first, second] = nutrientsOf(measure);
  const { name } = nutrients[first];
  const subject = estimated ? `Estimated ${name}` : upperFirst(name);
  const amount = amountText(first, totals[0].judged);
  if (measure.kind === 'daily-value-percent' && judged) return `${subject} ${rangeText(judged, '% of the Daily Value', 1)} (${amount})`;
  if (second === undefined || totals[1] === undefined) return `${subject} ${amount}`;
  const other = `${nutrients[second].name} ${amountText(second, totals[1].judged)}`;
  if (measure.kind === 'difference') return `${subject} ${amount} against ${other}`;
  return `${subject} ${amount} to ${other}${judged ? ` is ${rangeText(judged, unit, 2)}` : ''}`;
}

function noteText({ test, isMinimum }: ToldTest, on: OnBasis, value: Measured): string {
  const missing = value.missing.length > 0 ? `, and ${missingText(value)}` : '';
  if (value.judged === undefined || value.judged.lo === value.judged.hi) return missing;
  const end = isMinimum ? 'low' : 'high';
  if (value.estimated) return `; judged at the ${end} end of the estimate${missing}`;
  const printed = nutrientsOf(test.measure).flatMap(on.printedAs);
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

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
