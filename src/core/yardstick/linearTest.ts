import type { Nutrient } from '#core/quantity/nutrients.ts';
import { dependsOnPlate } from './basis.ts';
import { type BoundTest, boundOf, isBoundTest } from './boundTest.ts';
import { factsOf } from './measures/measureFacts.ts';
import { comparedRange, type Helping } from './served.ts';
import type { Test } from './yardstick.ts';

/**
 * A test on the plate as a sum over its foods: it fits when the loads of all helpings together are at most `limit`.
 * Sodium no more than energy: a helping's load is its sodium mg less its energy kcal, the limit is 0. A load scales with
 * the helping. Unknown amounts give NaN, which no comparison lets through.
 */
export interface LinearTest {
  readonly limit: number;
  /** Whether companions count: a test on the portion alone does not see them. */
  readonly seesCompanions: boolean;
  readonly loadOf: (helping: Helping) => number;
}

/** The tests of a yardstick that a portion or a companion can change, in linear form. */
export function linearTests(tests: readonly Test[]): readonly LinearTest[] {
  return tests.filter(isBoundTest).filter(dependsOnPlate).map(linearTest);
}

function linearTest(test: BoundTest): LinearTest {
  const bound = boundOf(test);
  const isMinimum = bound.kind === 'atLeast';
  const figure = bound.kind === 'below' ? justBelow(bound.figure) : bound.figure;
  const useEstimates = test.useEstimates ?? false;
  const { terms, limit } = factsOf(test.measure).linear(figure);
  /** A maximum takes the high end of what it counts and the low end of what it takes off; a minimum the reverse. */
  const end = ({ part, factor }: Helping, nutrient: Nutrient, high: boolean): number => {
    const range = comparedRange(part.food.label.amounts[nutrient], useEstimates);
    return range === undefined || typeof factor !== 'number' ? Number.NaN : factor * (high ? range.hi : range.lo);
  };
  const sign = isMinimum ? -1 : 1;
  return {
    seesCompanions: test.basis === 'on-plate',
    limit: sign * limit,
    loadOf: helping => {
      let load = 0;
      for (const { nutrient, weight, isTakenOff } of terms) {
        const part = weight * end(helping, nutrient, isTakenOff === isMinimum);
        load += isTakenOff ? -part : part;
      }
      return sign * load;
    },
  };
}

function justBelow(figure: number): number {
  return figure - 1e-6 * Math.max(1, Math.abs(figure));
}

/** The loads of the surveyed food, one per test. */
export function foodLoads(tests: readonly LinearTest[], helping: Helping): readonly number[] {
  return tests.map(test => test.loadOf(helping));
}

/** The loads of companions together, one per test. */
export function companionLoads(tests: readonly LinearTest[], helpings: readonly Helping[]): readonly number[] {
  return tests.map(test => (test.seesCompanions ? helpings.reduce((sum, helping) => sum + test.loadOf(helping), 0) : 0));
}

/** Whether loads keep every limit; the dust of sums is let through, since what is offered is judged again. */
export function keepLimits(tests: readonly LinearTest[], food: readonly number[], companions: readonly number[]): boolean {
  return tests.every(({ limit }, at) => food[at]! + companions[at]! <= limit + 1e-9 * Math.max(1, Math.abs(limit)));
}

/** load = fixed + variable × share must be at most the limit. */
export interface LinearRule {
  readonly variable: number;
  readonly fixed: number;
  readonly limit: number;
}

/** The shares at which all rules hold, between 0 and `most`; undefined when there is none. */
export function sharesThatFit(rules: readonly LinearRule[], most: number): { readonly least: number; readonly most: number } | undefined {
  let lo = 0;
  let hi = most;
  for (const { variable, fixed, limit } of rules) {
    const room = limit - fixed;
    if (variable > 0) hi = Math.min(hi, room / variable);
    else if (variable < 0) lo = Math.max(lo, room / variable);
    else if (!(room >= 0)) return undefined;
    if (Number.isNaN(variable) || Number.isNaN(room)) return undefined;
  }
  return lo <= hi ? { least: lo, most: hi } : undefined;
}
