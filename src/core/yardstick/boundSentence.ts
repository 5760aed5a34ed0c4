import { unknownReasonText } from '#core/quantity/amount.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import type { BoundOutcome, DecidedOutcome } from './boundOutcome.ts';
import { decimalsOf, marginRangeText, marginText, shownEnd } from './figureText.ts';
import type { Measured } from './measured.ts';
import type { ToldTest } from './toldTest.ts';

/**
 * The reason of a verdict in one sentence: "345 mg sodium against 350 kcal on the plate: 5 mg to spare; rounding: 20 mg to
 * spare … 10 mg over (common practice, no source)."
 */
export function boundSentence(told: ToldTest, outcome: DecidedOutcome): string {
  const { facts, isMinimum, bound } = told;
  const { unit } = facts;
  const { on, value, verdict, margin, marginRange, closeCall } = outcome;
  const finer = addsUp(told, value, margin) ? 0 : 1;
  const decimals = told.decimals + finer;
  // Joined and not added: the engine keeps a sum of texts as a tree of its pieces, which fills the memory in a large survey.
  return [
    upperFirst(subjectText(told, value, finer)),
    ' ',
    on.words,
    facts.tellsBound(bound) ? ': ' : `, ${told.boundWords}: `,
    value.missing.length > 0 ? 'at least ' : '',
    marginText(margin, verdict === 'fits', isMinimum, unit, decimals),
    verdict === 'nearly' ? `, within the slack of ${told.slackWords}` : '',
    closeCall ? `; rounding: ${marginRangeText(marginRange, isMinimum, unit, decimals)}` : '',
    noteText(told, outcome),
    ' (',
    told.sourceWords,
    ').',
  ].join('');
}

/** "Can't tell: potassium is unknown (not on the label); bound: at most 200 mg as eaten (…)." */
export function cannotTellSentence(told: ToldTest, { on, value }: BoundOutcome, reason: string): string {
  const known = value.missing.length === 0 || value.judged === undefined ? '' : `; known so far: ${subjectText(told, value, 0)}`;
  return `Can't tell: ${reason}${known}; bound: ${told.boundWords} ${on.words} (${told.sourceWords}).`;
}

/** "potassium is unknown (not on the label)". */
export function cannotTellReason(told: ToldTest, outcome: BoundOutcome): string {
  if (outcome.value.notDefined !== undefined) return outcome.value.notDefined;
  if (outcome.value.missing.length === 0) return `${subjectText(told, outcome.value, 0)}, and no end of it is known`;
  return missingText(outcome);
}

/**
 * Whether the shown figures give the shown margin: 597.5 mg against 120 kcal are 598, 120 and 478 over. One more decimal is
 * shown where they would not (127.5 mg against 130 kcal: 2.5 to spare), or where they would hide that a bound is missed.
 */
function addsUp(told: ToldTest, { totals, judged }: Measured, margin: number): boolean {
  const { facts, bound, isMinimum, decimals } = told;
  const unsafe = isMinimum ? 'lo' : 'hi';
  const safe = isMinimum ? 'hi' : 'lo';
  let shown = 0;
  if (facts.shownTerms !== null) {
    for (const [at, { nutrient, isTakenOff }] of facts.shownTerms.entries()) {
      const figure = shownEnd(totals[at]!.judged, isTakenOff ? safe : unsafe, decimalsOf(nutrient));
      shown += isTakenOff ? -figure : figure;
    }
  } else if (judged !== undefined) {
    shown = shownEnd(judged, unsafe, decimals);
  }
  const distance = roundHalfUp(Math.abs(margin), decimals);
  return Math.abs(Math.abs(bound.figure - shown) - distance) < 1e-9 && (distance > 0 || margin === 0);
}

/** What was measured: "estimated 250 mg potassium". */
function subjectText({ facts, decimals }: ToldTest, { totals, judged, estimated }: Measured, finer: number): string {
  const told = facts.told({ totals, judged, decimals, finer });
  return estimated ? `estimated ${told}` : told;
}

function noteText({ facts, isMinimum }: ToldTest, { on, value }: BoundOutcome): string {
  const missing = value.missing
    .map(({ nutrient, of, reason }) => `; ${nutrients[nutrient].name} of ${of} is unknown: ${unknownReasonText[reason]}`)
    .join('');
  if (value.judged === undefined || value.judged.lo === value.judged.hi) return missing;
  const end = isMinimum ? 'low' : 'high';
  if (value.estimated) return `; judged at the ${end} end of the estimate${missing}`;
  const printed = facts.nutrients.flatMap(on.printedAs);
  const words = printed.length > 0 ? `what the label prints as “${printed.join('”, “')}”` : 'a printed figure that stands for a range';
  return `; judged at the ${end} end of ${words}${missing}`;
}

/** "sodium and energy of Bread are unknown (not on the label)". The food is named where it is not the only one. */
function missingText({ on, value }: BoundOutcome): string {
  const parts = Map.groupBy(value.missing, ({ of, reason }) => `${on.foods > 1 ? ` of ${of}` : ''}\n${unknownReasonText[reason]}`);
  return [...parts]
    .map(([key, missing]) => {
      const [of, reason] = key.split('\n');
      const names = missing.map(({ nutrient }) => nutrients[nutrient].name);
      return `${names.join(' and ')}${of} ${names.length > 1 ? 'are' : 'is'} unknown (${reason})`;
    })
    .join(', ');
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
