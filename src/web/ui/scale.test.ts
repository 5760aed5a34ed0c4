import { describe, expect, it } from 'vitest';
import { ticksTo } from './scale.ts';

describe('a scale', () => {
  it('[WEB-28] goes by 1, 2 or 5 times a power of ten', () => {
    expect([3, 37, 60, 900, 0, 0.03, 0.5].map(most => ticksTo(most, 1)[1])).toEqual([5, 50, 100, 1000, 1, 0.05, 0.5]);
  });

  it('[WEB-28] goes from zero to a round end that holds the most', () => {
    expect(ticksTo(234, 4)).toEqual([0, 100, 200, 300]);
    expect(ticksTo(200, 4)).toEqual([0, 50, 100, 150, 200]);
    expect(ticksTo(0.55, 4)).toEqual([0, 0.2, 0.4, 0.6]);
    expect(ticksTo(0, 4)).toEqual([0, 1]);
  });
});
