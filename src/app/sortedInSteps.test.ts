import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sortedInSteps } from './sortedInSteps.ts';

test('a list sorted in steps is the list sorted at once, those that are equal in their order', async () => {
  for (const length of [0, 1, 1_999, 2_000, 2_001, 9_000]) {
    const numbers = fc.sample(fc.integer({ min: 0, max: 500 }), length).map((key, at) => ({ key, at }));
    const byKey = (a: { key: number }, b: { key: number }): number => a.key - b.key;
    expect(await sortedInSteps(numbers, byKey)).toEqual(numbers.toSorted(byKey));
  }
});
