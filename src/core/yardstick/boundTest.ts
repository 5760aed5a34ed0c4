import type { Bound } from './bound.ts';
import { isNumberMeasure } from './measures/measureFacts.ts';
import type { NumberMeasure } from './measures/measureKinds.ts';
import type { Test } from './yardstick.ts';

/** A test whose measure is a number, with its one bound. */
export interface BoundTest extends Test {
  readonly measure: NumberMeasure;
}

export function isBoundTest(test: Test): test is BoundTest {
  return isNumberMeasure(test.measure);
}

/** @throws RangeError for a test without a bound: `yardstickFromJson` lets none through. */
export function boundOf(test: Test): Bound {
  if (test.atMost !== undefined) return { kind: 'atMost', figure: test.atMost };
  if (test.below !== undefined) return { kind: 'below', figure: test.below };
  if (test.atLeast !== undefined) return { kind: 'atLeast', figure: test.atLeast };
  throw new RangeError(`test ${test.id} has no bound`);
}
