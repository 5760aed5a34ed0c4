import { isBoundTest } from '#core/yardstick/boundTest.ts';
import { absenceWords, isNumberMeasure } from '#core/yardstick/measures/measureFacts.ts';
import { basisText } from '#core/yardstick/testText.ts';
import { toldTest } from '#core/yardstick/toldTest.ts';
import type { Test, Verdict } from '#core/yardstick/yardstick.ts';

/** Why a food is not in the guide, in words that many foods share: the first test that gave the verdict. */
export function leftOutReason(tests: readonly Test[], { verdict, tests: outcomes, why }: Verdict): string {
  const deciding = outcomes.find(outcome => outcome.verdict === verdict);
  const test = tests.find(({ id }) => id === deciding?.testId);
  if (test === undefined) return why;
  if (isBoundTest(test)) {
    const { facts, boundWords } = toldTest(test);
    const subject = facts.briefSubject === undefined ? '' : `${facts.briefSubject} `;
    const rule = `${subject}${boundWords} ${basisText[test.basis]}`;
    return verdict === 'over' ? `does not keep the rule: ${rule}` : `can’t be told, a figure is not known: ${rule}`;
  }
  const what = measureWords(test);
  return verdict === 'over' ? `the label names ${what}` : `can’t be told whether it holds ${what}`;
}

function measureWords({ measure }: Test): string {
  return isNumberMeasure(measure) ? '' : absenceWords(measure);
}

/** Reasons with their counts, most frequent first. */
export function countedReasons(reasons: readonly string[]): readonly { readonly reason: string; readonly count: number }[] {
  return [...Map.groupBy(reasons, reason => reason)]
    .map(([reason, all]) => ({ reason, count: all.length }))
    .sort((a, b) => b.count - a.count || (a.reason < b.reason ? -1 : 1));
}
