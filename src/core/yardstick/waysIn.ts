import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { dependsOnPlate } from './basis.ts';
import { boundOf, isBoundTest } from './boundTest.ts';
import { companionChanges, increases, moreOfCompanion } from './companionWays.ts';
import { type JudgeInput, judgePlate, prepareJudge, servedOn, testsJudged } from './judgePlate.ts';
import { companionLoads, foodLoads, keepLimits, type LinearTest, linearTests, sharesThatFit } from './linearTest.ts';
import { factsOf } from './measures/measureFacts.ts';
import { mixWays } from './mixWays.ts';
import { portionWays, smallestShare } from './portionWays.ts';
import { type CompanionTotals, companionTotals, helpingOf } from './served.ts';
import { type Candidate, type Shelf, type WayIn, type WaysIn, wayInKinds } from './wayIn.ts';
import { nutrientsTold, wayIn } from './waySentence.ts';
import type { Test, TestVerdict, Verdict } from './yardstick.ts';

export interface WaysInput extends JudgeInput {
  readonly food: PlateFood;
  readonly shelf: Shelf;
}

/** The smallest changes that turn "over" or "nearly" into "fits". For many foods on one plate use `prepareWaysIn`. */
export function waysIn({ food, shelf, ...input }: WaysInput): WaysIn {
  return prepareWaysIn({ ...input, shelf })(food, judgePlate({ food, ...input }));
}

/** At most this many companions of other plates are offered in the place of one, as many beside it, and as many unsalted versions (own decision). */
const mostBorrowed = 3;

/**
 * Ways in for one plate, yardstick and shelf. Candidates come from closed forms, every one is judged again, and only what
 * then fits is offered: smallest change first, more of the companion last. docs/rules/yardstick.md, YST-30 and on.
 */
export function prepareWaysIn({ shelf, ...input }: JudgeInput & { readonly shelf: Shelf }): (food: PlateFood, verdict: Verdict) => WaysIn {
  const { plate } = input;
  const tests = testsJudged(input.yardstick, input.switchedOn ?? []);
  const linear = linearTests(tests);
  const judge = prepareJudge(input);
  const companions = companionTotals(plate.companions);
  const fixed = companionLoads(linear, plate.companions.map(helpingOf));
  const more = increases(plate, linear);
  const changes = companionChanges(plate, shelf.plates, linear);
  const unsaltedVersionsOf = unsaltedOnShelf(shelf.foods);
  const told = nutrientsTold(tests);

  return (food, verdict) => {
    const settled = settledReason(tests, verdict);
    if (settled !== undefined) return { ways: [], none: settled };
    const helping = helpingOf({ food, portion: plate.portion });
    if (typeof helping.factor !== 'number') return { ways: [], none: 'No way in: it is not known how much of the food the portion is.' };
    const loads = foodLoads(linear, helping);
    const share = largestShare(linear, loads, fixed);
    const unsalted = unsaltedVersionsOf(food);

    const ways: WayIn[] = [];
    const offer = (candidate: Candidate, totals: CompanionTotals): void => {
      const served = servedOn(candidate.plate, totals, food, candidate.mixedWith);
      const judged = judge(served);
      if (judged.verdict === 'fits') ways.push(wayIn(candidate, judged, served, told));
    };
    if (share > 0) for (const candidate of portionWays(food, plate, helping.factor, share)) offer(candidate, companions);
    for (const version of unsalted) {
      for (const candidate of mixWays(food, version, plate, linear, fixed)) offer(candidate, companions);
    }
    const offered = new Map<string, number>();
    for (const { candidate, companions: totals, loads: others } of changes) {
      const before = offered.get(candidate.kind) ?? 0;
      if (before >= mostBorrowed || !keepLimits(linear, loads, others)) continue;
      offered.set(candidate.kind, before + 1);
      offer(candidate, totals);
    }
    for (const increase of more) {
      const candidate = moreOfCompanion(plate, increase, linear, loads);
      if (candidate) offer(candidate, companionTotals(candidate.plate.companions));
    }

    if (ways.length > 0) return { ways: ways.sort(bySize) };
    const isKnown = ![...loads, ...fixed].some(Number.isNaN);
    return { ways, none: noneReason(plate, isKnown ? share : undefined, unsalted.length > 0, changes.length > 0) };
  };
}

/**
 * The largest share of the plate's portion that fits, from closed form: 0.5 means half of it, 1 the whole. 0 when none
 * does, an amount is unknown, or a test that no portion can change does not fit.
 */
export function largestShareThatFits({ plate, yardstick, switchedOn = [], food }: Omit<WaysInput, 'shelf' | 'setting'>): number {
  const tests = testsJudged(yardstick, switchedOn);
  const others = tests.filter(test => !portionChanges(test, plate));
  if (noPortionChanges(others, plate, judgePlate({ food, plate, yardstick: { ...yardstick, tests: others }, switchedOn }))) return 0;
  const linear = linearTests(tests);
  const loads = foodLoads(linear, helpingOf({ food, portion: plate.portion }));
  return largestShare(linear, loads, companionLoads(linear, plate.companions.map(helpingOf)));
}

/**
 * The first outcome that is not "fits" and that no portion of the food can change: something named or not told on the label, a figure per
 * 100 g or per serving, a ratio of the food eaten by itself. Undefined when there is none.
 */
export function noPortionChanges(tests: readonly Test[], plate: Plate, verdict: Verdict): TestVerdict | undefined {
  const fixed = new Set(tests.filter(test => !portionChanges(test, plate)).map(({ id }) => id));
  return verdict.tests.find(outcome => outcome.verdict !== 'fits' && fixed.has(outcome.testId));
}

function portionChanges(test: Test, { companions }: Plate): boolean {
  if (!isBoundTest(test) || !dependsOnPlate(test)) return false;
  // 2 mg sodium per kcal stay 2 in half of the food; with bread on the plate they do not.
  const isAlone = test.basis === 'as-eaten' || companions.length === 0;
  return !(isAlone && factsOf(test.measure).isProportion(boundOf(test).figure));
}

function largestShare(tests: readonly LinearTest[], food: readonly number[], companions: readonly number[]): number {
  const rules = tests.map(({ limit }, at) => ({ variable: food[at]!, fixed: companions[at]!, limit }));
  return sharesThatFit(rules, 1)?.most ?? 0;
}

function bySize(a: WayIn, b: WayIn): number {
  const last = Number(a.kind === 'more-of-companion') - Number(b.kind === 'more-of-companion');
  return last || a.change - b.change || wayInKinds.indexOf(a.kind) - wayInKinds.indexOf(b.kind);
}

/** Unsalted versions name the salted food by the food's id, its label's id or its name. */
function unsaltedOnShelf(foods: readonly PlateFood[]): (food: PlateFood) => readonly PlateFood[] {
  const versions = Map.groupBy(
    foods.filter(food => food.label.printed.unsaltedVersionOf),
    food => food.label.printed.unsaltedVersionOf,
  );
  if (versions.size === 0) return () => [];
  // A few of each key, so that a shelf with hundreds of namesakes stays linear.
  const few = (key: string | undefined): readonly PlateFood[] => versions.get(key)?.slice(0, mostBorrowed) ?? [];
  return ({ id, name, label }) => [...new Set([id, name, label.printed.id, label.printed.name])].flatMap(few).slice(0, mostBorrowed);
}

/** Why no portion and no companion can help; undefined when one may. */
function settledReason(tests: readonly Test[], verdict: Verdict): string | undefined {
  if (verdict.verdict === 'fits') return 'It fits as it is.';
  if (verdict.verdict === "can't tell") return 'The verdict cannot be told, so no change can be worked out.';
  for (const outcome of verdict.tests) {
    const test = tests.find(({ id }) => id === outcome.testId);
    if (outcome.verdict === 'fits' || test === undefined) continue;
    const canChange = isBoundTest(test) ? dependsOnPlate(test) : test.basis === 'on-plate';
    if (!canChange) return `No way in: no portion or companion changes this: ${outcome.why}`;
  }
  return undefined;
}

/** `share` is the largest share of the portion that fits; undefined when an amount is unknown. */
function noneReason(plate: Plate, share: number | undefined, hasUnsalted: boolean, hasChanges: boolean): string {
  const portion = portionReason(share);
  const companions = hasChanges ? 'no companion on your plates makes room for it' : 'there is no other companion on your plates';
  const more = plate.companions.length > 0 ? ', more of the companion does not do' : '';
  const unsalted = hasUnsalted ? 'mixing it with its unsalted version does not do' : 'no unsalted version of it is on the shelf';
  return `No way in: ${portion}, ${companions}${more}, and ${unsalted}.`;
}

function portionReason(share: number | undefined): string {
  if (share === undefined) return 'an amount is unknown, so no portion of it can be worked out';
  if (share === 0) return 'no portion of it fits';
  if (share < smallestShare) return 'only a portion under a quarter of this one would fit';
  return 'the largest portion that fits is no whole measure';
}
