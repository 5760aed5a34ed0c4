import { describe, expect, it } from 'vitest';
import type { PrintedLabel } from '#core/label/label.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { builtInYardsticks } from './builtInYardsticks.ts';
import { judgePlate } from './judgePlate.ts';
import type { Test, Verdict } from './yardstick.ts';

/** Check values 34 to 40 of the US label facts, after 21 CFR 101.13, 101.54, 101.56 and 101.61. */
const plate = builtInPlates.find(({ id }) => id === 'on-its-own')!;

function claim(id: string, label: Partial<PrintedLabel>): Verdict {
  const yardstick = builtInYardsticks.find(one => one.id === id)!;
  return judgePlate({ food: foodWith('Food', label), plate, yardstick });
}

function perReference(
  bound: Pick<Test, 'atMost' | 'atLeast'>,
  panel: PrintedLabel['panel'],
  nutrient: 'sodiumMg' | 'potassiumMg' = 'sodiumMg',
): string {
  const test: Test = {
    id: 't',
    measure: { kind: 'nutrient', nutrient },
    basis: 'per-reference-amount',
    ...bound,
    source: { kind: 'regulation', text: '21 CFR' },
  };
  const food = foodWith('Food', { serving: { grams: 140 }, panel, referenceAmount: 'meat-in-sauce' });
  return judgePlate({
    food,
    plate,
    yardstick: { id: 'y', title: 'y', purpose: '', tests: [test], classScales: [], settings: 'any', cautions: [] },
  }).verdict;
}

describe('US sodium claims', () => {
  it('[YST-11] check 34: a soup, reference amount 245 g, with 140 mg is low in sodium and with 141 mg is not', () => {
    const soup = { serving: { household: '1 cup', grams: 245 }, referenceAmount: 'soup' };
    expect(claim('low-sodium-us', { ...soup, panel: { sodiumMg: 140 } })).toMatchObject({ verdict: 'fits', closeCall: true });
    expect(claim('low-sodium-us', { ...soup, panel: { sodiumMg: 141 } }).verdict).toBe('over');
  });

  it('[YST-11] check 35: a condiment, reference amount 15 g, with 60 mg has 200 mg per 50 g and is not low', () => {
    const verdict = claim('low-sodium-us', { serving: { grams: 15 }, panel: { sodiumMg: 60 }, referenceAmount: { grams: 15 } });
    expect(verdict.verdict).toBe('over');
    expect(verdict.tests[0]).toMatchObject({ judged: { lo: 200, hi: 200 }, margin: -60 });
    expect(verdict.why).toContain('per 50 g');
  });

  it('[YST-11] the 50 g rule is for 30 g or less and for 2 tablespoons or less', () => {
    const per = (grams: number) =>
      claim('low-sodium-us', { serving: { grams }, panel: { sodiumMg: 100 }, referenceAmount: { grams } }).verdict;
    expect(per(30)).toBe('over');
    expect(per(31)).toBe('fits');
    const dip = { serving: { household: '2 tbsp', grams: 33 }, panel: { sodiumMg: 100 }, referenceAmount: 'dip-or-salsa' };
    expect(claim('low-sodium-us', dip).tests[0]?.judged?.hi).toBeCloseTo(100 * (50 / 33), 6);
  });

  it('[YST-11] check 36: a frozen meal of 300 g with 450 mg has 150 mg per 100 g and is not low', () => {
    const meal = { serving: { grams: 300 }, referenceAmount: { kind: 'meal' as const } };
    expect(claim('low-sodium-us', { ...meal, panel: { sodiumMg: 450 } })).toMatchObject({
      verdict: 'over',
      tests: [{ judged: { hi: 150 } }],
    });
    expect(claim('low-sodium-us', { ...meal, panel: { sodiumMg: 420 } }).verdict).toBe('fits');
    expect(claim('very-low-sodium-us', { ...meal, panel: { sodiumMg: 105 } }).verdict).toBe('fits');
  });

  it('[YST-10] check 37: 25 % less than 800 mg per reference amount is 600 mg, and 601 mg is not', () => {
    expect(perReference({ atMost: 0.75 * 800 }, { sodiumMg: 600 })).toBe('fits');
    expect(perReference({ atMost: 0.75 * 800 }, { sodiumMg: 601 })).toBe('over');
  });

  it('[YST-10] check 38: 50 % less than 800 mg per reference amount is 400 mg', () => {
    expect(perReference({ atMost: 0.5 * 800 }, { sodiumMg: 400 })).toBe('fits');
  });

  it('[YST-10] check 39: 481 mg per reference amount exceeds the 480 mg of 21 CFR 101.13(h)', () => {
    expect(perReference({ atMost: 480 }, { sodiumMg: 481 })).toBe('over');
    expect(perReference({ atMost: 480 }, { sodiumMg: 480 })).toBe('fits');
  });

  it('[YST-10] check 40: potassium 470 mg is 10 % and 940 mg 20 % of the Daily Value (21 CFR 101.54(b), (c))', () => {
    expect(perReference({ atLeast: 470 }, { potassiumMg: 470 }, 'potassiumMg')).toBe('fits');
    expect(perReference({ atLeast: 940 }, { potassiumMg: 470 }, 'potassiumMg')).toBe('over');
    expect(perReference({ atLeast: 940 }, { potassiumMg: 940 }, 'potassiumMg')).toBe('fits');
  });

  it('[YST-12] free of sodium is under 5 mg per reference amount and per serving', () => {
    const water = { serving: { household: '1 cup', milliliters: 240 }, referenceAmount: 'soft-drink' };
    expect(claim('sodium-free-us', { ...water, panel: { sodiumMg: 0 } }).verdict).toBe('fits');
    expect(claim('sodium-free-us', { ...water, panel: { sodiumMg: 5 } }).verdict).toBe('over');
    // 5 mg in a cup are 7.5 mg in the reference amount of 360 mL.
    expect(claim('sodium-free-us', { ...water, panel: { sodiumMg: 5 } }).tests[0]?.judged?.hi).toBeCloseTo(7.5, 9);
    const large = { serving: { grams: 300 }, panel: { sodiumMg: 5 }, referenceAmount: { grams: 100 } };
    expect(claim('sodium-free-us', large).tests.map(({ verdict }) => verdict)).toEqual(['fits', 'over']);
    // The 50 g rule is not for "free": 2 mg per 15 g stay 2 mg.
    expect(claim('sodium-free-us', { serving: { grams: 30 }, panel: { sodiumMg: 0 }, referenceAmount: { grams: 15 } }).verdict).toBe(
      'fits',
    );
  });

  it('[YST-12] a meal is free of sodium under 5 mg per serving', () => {
    const meal = { serving: { grams: 300 }, referenceAmount: { kind: 'main-dish' as const } };
    expect(claim('sodium-free-us', { ...meal, panel: { sodiumMg: 0 } }).verdict).toBe('fits');
    expect(claim('sodium-free-us', { ...meal, panel: { sodiumMg: 5 } }).verdict).toBe('over');
  });

  it("[YST-11] without a known reference amount it can't tell", () => {
    const label = { serving: { grams: 56 }, panel: { sodiumMg: 0 } };
    expect(claim('low-sodium-us', label)).toMatchObject({
      verdict: "can't tell",
      why: expect.stringContaining('no reference amount is known for Food'),
    });
    expect(claim('low-sodium-us', { ...label, referenceAmount: 'moon-cheese' }).verdict).toBe("can't tell");
    expect(claim('low-sodium-us', { panel: { sodiumMg: 0 }, referenceAmount: 'soup' }).verdict).toBe("can't tell");
  });
});
