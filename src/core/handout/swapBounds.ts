import { isMost, isNeed } from '#core/client/aims/limitKind.ts';
import { amountOfNeed, type Need, needs } from '#core/client/aims/needs.ts';
import { fluidOnPlate } from '#core/plate/fluid.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import { type Interval, scale } from '#core/quantity/interval.ts';
import { amountIn } from '#core/yardstick/aimOrder.ts';
import { isBoundTest } from '#core/yardstick/boundTest.ts';
import { testsJudged } from '#core/yardstick/judgePlate.ts';
import { comparedRange } from '#core/yardstick/served.ts';
import { aimedFood } from './aimed.ts';
import type { HandoutDraft, HandoutFood, HandoutSurvey } from './handout.ts';

/** Dust of a sum in binary. */
const dust = 1e-9;

/**
 * Whether the food in the place of another may bring more of anything that has an upper bound, each in the usual portion: its high end against the other's
 * low end. A label that does not tell what the other tells may hide more; where neither tells, or only the better one, there is nothing to compare, and
 * what is known keeps the bound. 400 to 500 mg in the place of 450 mg may be more.
 */
export function mayRaise(from: HandoutFood, to: HandoutFood, survey: HandoutSurvey, draft: HandoutDraft): boolean {
  const bounded = testsJudged(survey.yardstick, survey.switchedOn).some(test => {
    if (!isBoundTest(test) || test.measure.kind !== 'nutrient' || (test.atMost ?? test.below) === undefined) return false;
    const { nutrient } = test.measure;
    const [before, after] = [from, to].map(({ food }) => {
      const factor = portionFactor(survey.plate.portion, food);
      const range = comparedRange(food.label.amounts[nutrient], test.useEstimates ?? false);
      return range === undefined || typeof factor !== 'number' ? undefined : scale(range, factor);
    });
    return isMoreThan(before, after);
  });
  return bounded || mayRaiseFluid(from, to, survey, draft);
}

function isMoreThan(before: Interval | undefined, after: Interval | undefined): boolean {
  if (before === undefined) return false;
  return after === undefined || after.hi > before.lo + dust;
}

function mayRaiseFluid(from: HandoutFood, to: HandoutFood, { plate, category }: HandoutSurvey, { prescription }: HandoutDraft): boolean {
  if (!(prescription?.targets.some(one => one.item === 'fluid' && isMost(one)) ?? false)) return false;
  const [before, after] = [from, to].map(({ food }) => fluidOnPlate(plate, food, category.category));
  if (before?.kind === 'not-known' || after?.kind === 'none') return false;
  const most = before?.kind === 'fluid' ? before.milliliters : 0;
  return after?.kind !== 'fluid' || after.milliliters > most + dust;
}

/** What is signed as "at least", and that a swap has less of: surely, or as far as the labels tell. */
export function loweredBy(
  from: HandoutFood,
  to: HandoutFood,
  survey: HandoutSurvey,
  { prescription }: HandoutDraft,
): { readonly sure: readonly Need[]; readonly possible: readonly Need[] } {
  const sure: Need[] = [];
  const possible: Need[] = [];
  for (const need of needs) {
    if (!(prescription?.targets.some(one => one.item === need && isNeed(one)) ?? false)) continue;
    const [before, after] = [from, to].map(one => amountIn(amountOfNeed[need], aimedFood(one, survey)));
    if (before !== undefined && after !== undefined && after.hi < before.lo - dust) sure.push(need);
    else if (before === undefined || after === undefined || after.lo < before.hi - dust) possible.push(need);
  }
  return { sure, possible };
}
