import type { Plate } from '#core/plate/plate.ts';
import { onPlate } from '#core/plate/plateAmounts.ts';
import type { Total } from '#core/quantity/amount.ts';
import { type BoundTest, isBoundTest } from '#core/yardstick/boundTest.ts';
import { factsOf } from '#core/yardstick/measures/measureFacts.ts';
import { isSodiumToEnergy } from '#core/yardstick/sodiumToEnergy.ts';
import { toldMargin, toldTest } from '#core/yardstick/toldTest.ts';
import type { Test, TestVerdict, Verdict } from '#core/yardstick/yardstick.ts';
import type { GuideSurveyFood } from './guide.ts';
import type { MarginBar } from './guidePage.ts';

interface BoundVerdict {
  readonly test: BoundTest;
  readonly outcome: TestVerdict;
}

/** Tests with a number, each with its outcome. */
function boundVerdicts(tests: readonly Test[], { tests: outcomes }: Verdict): readonly BoundVerdict[] {
  return tests.filter(isBoundTest).flatMap(test => {
    const outcome = outcomes.find(({ testId }) => testId === test.id);
    return outcome === undefined ? [] : [{ test, outcome }];
  });
}

/** "20 mg to spare", "10 mg over": the distance to each bound; with several bounds the reader is told which. */
export function marginWords(tests: readonly Test[], verdict: Verdict): readonly string[] {
  const judged = boundVerdicts(tests, verdict);
  return judged.map(({ test, outcome }) => {
    const told = toldTest(test);
    const subject = judged.length > 1 ? `${told.boundWords}: ` : '';
    return subject + (toldMargin(told, outcome) ?? outcome.reason ?? 'not known');
  });
}

/** The margin that decides an order: the smallest of all bounds; undefined where none is known. */
export function smallestMargin(tests: readonly Test[], verdict: Verdict): number | undefined {
  const margins = boundVerdicts(tests, verdict).flatMap(({ outcome: { margin } }) => (margin === undefined ? [] : [margin]));
  return margins.length === 0 ? undefined : Math.min(...margins);
}

/**
 * Where a food stands against the first maximum, as shares of it. Sodium against energy is told as sodium over the most that the
 * plate's energy allows: 200 mg on a plate of 220 kcal is 0.91. Undefined where the bound or the amount is not above zero or not known.
 */
export function marginBarOf(tests: readonly Test[], { food, verdict }: GuideSurveyFood, plate: Plate): MarginBar | undefined {
  const found = boundVerdicts(tests, verdict).find(({ test }) => test.atMost !== undefined || test.below !== undefined);
  if (found?.outcome.judged === undefined || found.outcome.range === undefined) return undefined;
  const { test, outcome } = found;
  const { judged, range } = found.outcome;
  const bound = (test.atMost ?? test.below)!;
  const takesOff = factsOf(test.measure).shownTerms?.some(({ isTakenOff }) => isTakenOff) ?? false;
  const moved = takesOff ? energyOf(test, onPlate(plate, food, 'energyKcal')) : 0;
  const limit = bound + (moved ?? Number.NaN);
  if (!(limit > 0) || moved === undefined || !Number.isFinite(judged!.hi) || outcome.verdict === "can't tell") return undefined;
  const share = (value: number): number => Math.max(0, (value + moved) / limit);
  return { value: share(judged!.hi), lo: share(range!.lo), hi: share(range!.hi), estimated: outcome.estimated };
}

function energyOf({ basis, measure }: BoundTest, energyKcal: Total): number | undefined {
  return basis === 'on-plate' && isSodiumToEnergy(measure) && energyKcal.missing.length === 0 ? energyKcal.judged.lo : undefined;
}
