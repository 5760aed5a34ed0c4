import type { Plate, PlateFood, PlatePart } from '#core/plate/plate.ts';
import { basesOf } from './basis.ts';
import { isBoundTest } from './boundTest.ts';
import { absenceJudge } from './judgeAbsence.ts';
import { judgeBound } from './judgeBound.ts';
import { type CompanionTotals, companionTotals, helpingOf, type Served } from './served.ts';
import { shownClass } from './shownClass.ts';
import { sourceText } from './sourceText.ts';
import { type ToldTest, toldTest } from './toldTest.ts';
import type { Setting, ShownClass, Test, TestVerdict, Verdict, VerdictWord, Yardstick } from './yardstick.ts';

/** What foods are judged by, and on which plate. */
export interface JudgeInput {
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly setting?: Setting;
  /** Ids of tests that are `off` unless named here. */
  readonly switchedOn?: readonly string[];
}

export interface PlateInput extends JudgeInput {
  readonly food: PlateFood;
  /** Part of the portion that is another food: half-and-half with an unsalted version. Counts as eaten, not as a companion. */
  readonly mixedWith?: PlatePart;
}

/** Judges one food on a plate. For many foods on one plate, `prepareJudge` sums the companions once. */
export function judgePlate({ food, mixedWith, ...input }: PlateInput): Verdict {
  return prepareJudge(input)(servedOn(input.plate, companionTotals(input.plate.companions), food, mixedWith));
}

/** A judge for one yardstick; what it judges is made by `servedOn`. */
export function prepareJudge({ yardstick, setting, switchedOn = [] }: Omit<JudgeInput, 'plate'>): (served: Served) => Verdict {
  if (setting !== undefined && yardstick.settings !== 'any' && !yardstick.settings.includes(setting)) {
    const why = `Can't tell: “${yardstick.title}” is for ${yardstick.settings.join(', ')}, not for ${setting}.`;
    return () => ({ yardstickId: yardstick.id, verdict: "can't tell", closeCall: false, estimated: false, why, tests: [], classes: [] });
  }
  const judges = testsJudged(yardstick, switchedOn).map(judgeOf);
  return served => {
    const tests = judges.map(judge => judge(served));
    const classes = yardstick.classScales.map(scale => shownClass(scale, served));
    return { yardstickId: yardstick.id, ...joined(tests, classes), tests, classes };
  };
}

/** A food on a plate, with the totals of its companions. */
export function servedOn(plate: Plate, companions: CompanionTotals, food: PlateFood, mixedWith?: PlatePart): Served {
  const helping = helpingOf({ food, portion: plate.portion });
  return { surveyed: mixedWith ? [helping, helpingOf(mixedWith)] : [helping], companions };
}

export function testsJudged({ tests }: Yardstick, switchedOn: readonly string[]): readonly Test[] {
  return tests.filter(test => !test.off || switchedOn.includes(test.id));
}

function judgeOf(test: Test): (served: Served) => TestVerdict {
  if (!isBoundTest(test)) return absenceJudge(test);
  const told = toldTest(test);
  return served => judgeOnBases(told, served);
}

/** A test judged on two bases, as a claim on a small reference amount is, has the worse outcome of the two. */
function judgeOnBases(told: ToldTest, served: Served): TestVerdict {
  const { test } = told;
  let worst: TestVerdict | undefined;
  for (const on of basesOf(test, served)) {
    const outcome = 'cannotTell' in on ? cannotTell(test, on.cannotTell) : judgeBound(told, on);
    if (worst === undefined || isWorse(outcome, worst)) worst = outcome;
  }
  return worst ?? cannotTell(test, 'there is no food');
}

function isWorse(one: TestVerdict, other: TestVerdict): boolean {
  const byWord = rank[one.verdict] - rank[other.verdict];
  return byWord > 0 || (byWord === 0 && (one.margin ?? 0) < (other.margin ?? 0));
}

function cannotTell(test: Test, reason: string): TestVerdict {
  const why = `Can't tell: ${reason} (${sourceText(test.source)}).`;
  return { testId: test.id, verdict: "can't tell", closeCall: false, estimated: false, reason, why };
}

const rank: Readonly<Record<VerdictWord, number>> = { fits: 0, nearly: 1, "can't tell": 2, over: 3 };

/**
 * over > can't tell > nearly > fits. The flags say whether rounding (or an estimate) carries the joined verdict: one such
 * test is enough to shake "fits"; any other word stands as long as one test without the flag gives it.
 */
function joined(
  tests: readonly TestVerdict[],
  classes: readonly ShownClass[],
): Pick<Verdict, 'verdict' | 'closeCall' | 'estimated' | 'why'> {
  const deciding = tests.reduce<TestVerdict | undefined>(
    (worst, test) => (worst && rank[worst.verdict] >= rank[test.verdict] ? worst : test),
    undefined,
  );
  if (deciding === undefined) return { verdict: "can't tell", closeCall: false, estimated: false, why: nothingJudged(classes) };
  const { verdict } = deciding;
  const alike = tests.filter(test => test.verdict === verdict);
  const flag = (has: (test: TestVerdict) => boolean): boolean => (verdict === 'fits' ? alike.some(has) : alike.every(has));
  return { verdict, closeCall: flag(test => test.closeCall), estimated: flag(test => test.estimated), why: deciding.why };
}

function nothingJudged(classes: readonly ShownClass[]): string {
  const shown = classes.map(({ why }) => why.replace(/\.$/, '')).join('; ');
  return `Nothing is judged until a bound is switched on${shown && `; shown: ${shown}`}.`;
}
