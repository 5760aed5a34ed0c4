import { expect, test } from 'vitest';
import { binderCalciumMg, calciumShare } from './binderCalcium.ts';

// By hand from the IUPAC abridged standard atomic weights 2021 (H 1.008, C 12.011, O 15.999, Ca 40.078):
// CaCO3 = 40.078 + 12.011 + 3 × 15.999 = 100.086; Ca(CH3COO)2 = 40.078 + 4 × 12.011 + 6 × 1.008 + 4 × 15.999 = 158.166.
test('[CLT-80] the share of calcium comes from the formula: 40.04 % and 25.34 %', () => {
  expect(calciumShare['calcium-carbonate']).toBeCloseTo(40.078 / 100.086, 12);
  expect(calciumShare['calcium-acetate']).toBeCloseTo(40.078 / 158.166, 12);
  expect(calciumShare['calcium-carbonate'] * 100).toBeCloseTo(40.04, 2);
  expect(calciumShare['calcium-acetate'] * 100).toBeCloseTo(25.34, 2);
});

// What labels print: 667 mg calcium acetate "equal to 169 mg calcium"; 1250 mg calcium carbonate "500 mg calcium" (facts 6.4; labels from memory).
test.each([
  ['calcium-acetate', 667, 1, 169],
  ['calcium-acetate', 667, 6, 1014],
  ['calcium-carbonate', 1250, 1, 501],
  ['calcium-carbonate', 500, 3, 601],
  ['calcium-carbonate', 500, 0, 0],
] as const)('[CLT-80] %s %d mg, %d a day: %d mg calcium', (binder, unitMg, units, mg) => {
  const result = binderCalciumMg(binder, unitMg, units);
  expect(result.kind === 'computed' && Math.round(result.value)).toBe(mg);
});

test.each([
  [0, 3],
  [3001, 3],
  [667, -1],
  [667, 61],
  [Number.NaN, 1],
])('[CLT-80] %d mg, %d a day is no dose', (unitMg, units) => {
  expect(binderCalciumMg('calcium-acetate', unitMg, units).kind).toBe('refused');
});
