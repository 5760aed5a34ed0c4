import { describe, expect, test } from 'vitest';
import { contains } from '#core/quantity/interval.ts';
import { usComplianceRange } from './complianceRange.ts';

describe('what a food may truly hold', () => {
  // 21 CFR 101.9(g)(5): sodium at most 120 % of the label.
  test('[LBL-23] sodium declared as 140 mg: 168 mg is compliant, 169 mg is not', () => {
    const range = usComplianceRange('sodiumMg', 140, 'natural')!;
    expect(contains(range, 168)).toBe(true);
    expect(contains(range, 169)).toBe(false);
  });

  // 21 CFR 101.9(g)(4)(ii), (g)(6): natural potassium at least 80 %, no numeric limit above.
  test('[LBL-23] natural potassium declared as 470 mg: 376 and 900 mg are compliant, 375 mg is not', () => {
    const range = usComplianceRange('potassiumMg', 470, 'natural')!;
    expect(contains(range, 376)).toBe(true);
    expect(contains(range, 375)).toBe(false);
    expect(contains(range, 900)).toBe(true);
  });

  // 21 CFR 101.9(g)(3)(i), (g)(4)(i): with potassium chloride added, the whole must reach the label.
  test('[LBL-23] added potassium declared as 470 mg: 460 mg is too little', () => {
    expect(contains(usComplianceRange('potassiumMg', 470, 'added')!, 460)).toBe(false);
  });
});
