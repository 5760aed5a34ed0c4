import { expect, test } from 'vitest';
import { addedSolutionSharePercent } from './addedSolution.ts';

// 9 CFR 317.2(e)(2)(i): the percent is of the raw meat without solution, so 15 is 15 of 115 parts.
test('[LBL-24] 15 % added solution is 13.0 % of the finished product', () => {
  for (const words of ['containing 15% added solution', 'WITH A 15 PERCENT SOLUTION OF WATER AND SALT'])
    expect(addedSolutionSharePercent(words)).toEqual({ lo: expect.closeTo(13.04, 2), hi: expect.closeTo(13.04, 2) });
});

test('[LBL-24] "up to" makes it an upper bound', () => {
  expect(addedSolutionSharePercent('contains up to 15% of a solution')).toEqual({ lo: 0, hi: expect.closeTo(13.04, 2) });
});

test('[LBL-24] other claims and retained water are no added solution (9 CFR 441.10)', () => {
  for (const words of ['reduced sodium', 'up to 4% retained water', '25% less sodium', 'solution', 'x'.repeat(10_000_000)])
    expect(addedSolutionSharePercent(words)).toBeUndefined();
});
