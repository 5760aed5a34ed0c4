import { describe, expect, it } from 'vitest';
import { absorbedFractions } from './absorbed.ts';

describe('absorbedFractions', () => {
  // kidney facts 6.1 (Ren Replace Ther 2017, s41100-017-0095-x, Table 1).
  const parts = [
    ['animal', 400, 160, 240],
    ['plant', 300, 60, 120],
    ['inorganic', 200, 180, 200],
  ] as const;

  it.each(parts)('[RCP-12] of %s phosphorus %d mg between %d and %d mg are absorbed', (kind, mg, lo, hi) => {
    expect(absorbedFractions[kind].lo * mg).toBeCloseTo(lo, 9);
    expect(absorbedFractions[kind].hi * mg).toBeCloseTo(hi, 9);
  });

  it('[RCP-12] of all three together 400 to 560 mg; what nobody knows spans all kinds', () => {
    const sum = (end: 'lo' | 'hi') => parts.reduce((total, [kind, mg]) => total + absorbedFractions[kind][end] * mg, 0);
    expect(sum('lo')).toBeCloseTo(400, 9);
    expect(sum('hi')).toBeCloseTo(560, 9);
    expect(absorbedFractions.unknown).toEqual({ lo: 0.2, hi: 1 });
  });
});
