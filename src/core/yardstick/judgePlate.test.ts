import { describe, expect, it } from 'vitest';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import type { Amount } from '#core/quantity/amount.ts';
import { builtInYardsticks } from './builtInYardsticks.ts';
import { judgePlate } from './judgePlate.ts';
import type { Test, TestVerdict, Yardstick } from './yardstick.ts';

const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;
const withPasta = builtInPlates.find(({ id }) => id === 'with-dry-pasta')!;
const asEaten = builtInYardsticks.find(({ id }) => id === 'low-in-sodium-as-eaten')!;

const food = (energyKcal: number | string, sodiumMg: number | string, more = {}) =>
  foodWith('Slices', { panel: { energyKcal, sodiumMg, ...more } });

function yardstickOf(...tests: Test[]): Yardstick {
  return { id: 'own', title: 'own', purpose: '', tests, classScales: [], settings: 'any', cautions: [] };
}

function judgeOne(test: Partial<Test> & Pick<Test, 'measure'>, eaten: PlateFood, plate: Plate = alone): TestVerdict {
  const whole: Test = { id: 'test', basis: 'as-eaten', source: { kind: 'clinic', text: 'own clinic' }, ...test };
  return judgePlate({ food: eaten, plate, yardstick: yardstickOf(whole) }).tests[0]!;
}

const potassium = { kind: 'nutrient', nutrient: 'potassiumMg' } as const;
const sodium = { kind: 'nutrient', nutrient: 'sodiumMg' } as const;
const phosphorusToProtein = { kind: 'ratio', nutrient: 'phosphorusMg', per: 'proteinG' } as const;

describe('the rule of sodium and energy on a plate (common practice, no source)', () => {
  it('[YST-1] 70 kcal and 150 mg sodium are over alone and fit with 2 oz of dry pasta (200 kcal, 0 mg)', () => {
    expect(judgePlate({ food: food(70, 150), plate: alone, yardstick: asEaten }).verdict).toBe('over');
    const verdict = judgePlate({ food: food(70, 150), plate: withPasta, yardstick: asEaten });
    expect(verdict.verdict).toBe('fits');
    expect(verdict.tests[0]).toMatchObject({ margin: 120, closeCall: false });
    expect(verdict.why).toBe('150 mg sodium against 270 kcal on the plate: 120 mg to spare (common practice, no source).');
  });

  it.each([
    [290, 'fits'],
    [300, 'nearly'],
    [301, 'over'],
  ] as const)('[YST-6] beside dry pasta a food of 90 kcal with %i mg sodium: %s (own kcal + 200, slack 10 mg)', (sodiumMg, word) => {
    expect(judgePlate({ food: food(90, sodiumMg), plate: withPasta, yardstick: asEaten }).verdict).toBe(word);
  });

  it('[YST-1] works at zero energy, where a ratio does not', () => {
    expect(judgePlate({ food: food(0, 0), plate: alone, yardstick: asEaten }).verdict).toBe('fits');
    expect(judgePlate({ food: food(0, 60), plate: alone, yardstick: asEaten }).verdict).toBe('over');
  });

  it('[YST-1] a portion as eaten can hold a third of a day: half a cup of a salty sauce, 760 mg of 2,300 mg (KDOQI 2020)', () => {
    const sauce = foodWith('Salty sauce', { serving: { household: '1/4 cup', grams: 62 }, panel: { energyKcal: 60, sodiumMg: 380 } });
    const plate = builtInPlates.find(({ id }) => id === 'half-cup-with-dry-pasta')!;
    const outcome = judgeOne(
      { measure: { kind: 'daily-value-percent', nutrient: 'sodiumMg' }, basis: 'on-plate', atMost: 33 },
      sauce,
      plate,
    );
    expect(judgeOne({ measure: sodium, basis: 'on-plate', atMost: 700 }, sauce, plate).verdict).toBe('over');
    expect(outcome.judged?.hi).toBeCloseTo((760 / 2300) * 100, 6);
  });
});

describe('one test', () => {
  it('[YST-2] a range that crosses the bound is a close call with the range of its margin', () => {
    // 21 CFR 101.9(c)(1), (4): 350 kcal are 345 up to 355, 345 mg is no US print; 340 mg are 335 up to 345.
    const outcome = judgePlate({ food: food(350, 340), plate: alone, yardstick: asEaten }).tests[0]!;
    expect(outcome).toMatchObject({ verdict: 'fits', closeCall: false, margin: 10, marginRange: { lo: 0, hi: 20 } });
    const close = judgePlate({ food: food(350, 350), plate: alone, yardstick: asEaten });
    expect(close).toMatchObject({ verdict: 'fits', closeCall: true });
    expect(close.tests[0]?.marginRange).toEqual({ lo: -10, hi: 10 });
    expect(close.why).toContain('0 mg to spare; rounding: 10 mg to spare … 10 mg over');
  });

  it('[YST-2] an over that rounding could undo is a close call as well', () => {
    // 150 kcal are 145 up to 155, 160 mg are 155 up to 165.
    const outcome = judgePlate({ food: food(150, 160), plate: alone, yardstick: asEaten }).tests[0];
    expect(outcome).toMatchObject({ verdict: 'nearly', closeCall: true, marginRange: { lo: -20, hi: 0 } });
    expect(outcome?.why).toContain('10 mg over, within the slack of 10 mg; rounding: 0 mg to spare … 20 mg over');
    expect(judgeOne({ measure: sodium, atMost: 147 }, food(100, 150))).toMatchObject({ verdict: 'over', closeCall: true });
  });

  it('[YST-3] what the label does not print is unknown', () => {
    const outcome = judgeOne({ measure: potassium, atMost: 200 }, food(70, 150));
    expect(outcome).toMatchObject({ verdict: "can't tell", closeCall: false });
    expect(outcome.judged).toBeUndefined();
    expect(outcome.why).toBe("Can't tell: potassium is unknown (not on the label); bound: at most 200 mg as eaten (own clinic).");
  });

  it('[YST-3] a total with an unknown part is over as soon as its known part is', () => {
    // Dry pasta has no known potassium.
    const outcome = judgeOne({ measure: potassium, basis: 'on-plate', atMost: 200 }, food(70, 150, { potassiumMg: 360 }), withPasta);
    expect(outcome.verdict).toBe('over');
    expect(outcome.why).toContain('at least 160 mg over');
    expect(outcome.why).toContain('potassium of Dry pasta');
    expect(judgeOne({ measure: potassium, basis: 'on-plate', atMost: 400 }, food(70, 150, { potassiumMg: 360 }), withPasta).verdict).toBe(
      "can't tell",
    );
  });

  it('[YST-3] a known part that is over by less than the slack does not make a total "nearly"', () => {
    const outcome = judgeOne(
      { measure: potassium, basis: 'on-plate', atMost: 355, slack: 10 },
      food(70, 150, { potassiumMg: 360 }),
      withPasta,
    );
    expect(outcome.verdict).toBe("can't tell");
  });

  it('[YST-3] with energy unknown sodium less energy cannot be told, however much sodium there is', () => {
    const noEnergy = foodWith('Slices', { panel: { sodiumMg: 900 } });
    expect(judgePlate({ food: noEnergy, plate: alone, yardstick: asEaten }).verdict).toBe("can't tell");
    expect(judgePlate({ food: noEnergy, plate: withPasta, yardstick: asEaten }).verdict).toBe("can't tell");
  });

  it('[YST-3] a minimum is reached as soon as its known part reaches it', () => {
    const protein = { measure: { kind: 'nutrient', nutrient: 'proteinG' }, basis: 'on-plate' } as const;
    expect(judgeOne({ ...protein, atLeast: 10 }, food(70, 150, { proteinG: 13 }), withPasta).verdict).toBe('fits');
    expect(judgeOne({ ...protein, atLeast: 15 }, food(70, 150, { proteinG: 13 }), withPasta).verdict).toBe("can't tell");
  });

  it('[YST-4] potassium printed 0 mg stands for 0 up to 94 mg (21 CFR 101.9(c)(8)(iii)) and is judged at 94', () => {
    const zero = food(70, 150, { potassiumMg: '0 mg' });
    const outcome = judgeOne({ measure: potassium, atMost: 50 }, zero);
    expect(outcome).toMatchObject({ verdict: 'over', margin: -44, closeCall: true });
    expect(outcome.why).toContain('judged at the high end of what the label prints as “0 mg”');
    expect(judgeOne({ measure: potassium, atMost: 100 }, zero).verdict).toBe('fits');
    expect(judgeOne({ measure: potassium, atLeast: 50 }, zero)).toMatchObject({ verdict: 'over', margin: -50 });
  });

  it('[YST-4] potassium printed as 10 % alone is 423 up to 587.5 mg (21 CFR 101.9(c)(8)(iii)), judged at 587.5', () => {
    expect(judgeOne({ measure: potassium, atMost: 580 }, food(70, 150, { potassiumMg: '10%' }))).toMatchObject({
      verdict: 'over',
      margin: -7.5,
    });
  });

  it("[YST-4] an end without limit is can't tell unless the other end settles it", () => {
    const open = withAmounts(food(70, 150), {
      potassiumMg: { kind: 'known', range: { lo: 120, hi: Number.POSITIVE_INFINITY }, source: 'printed' },
    });
    expect(judgeOne({ measure: potassium, atMost: 200 }, open).verdict).toBe("can't tell");
    expect(judgeOne({ measure: potassium, atMost: 100 }, open).verdict).toBe('over');
    expect(judgeOne({ measure: potassium, atLeast: 100 }, open).verdict).toBe('fits');
  });

  it('[YST-5] an estimate counts as unknown unless the test uses it, and then at its safe end', () => {
    const estimate: Amount = { kind: 'known', likely: 150, range: { lo: 90, hi: 230 }, source: 'estimated' };
    const estimated = withAmounts(food(70, 150), { potassiumMg: estimate });
    expect(judgeOne({ measure: potassium, atMost: 200 }, estimated).verdict).toBe("can't tell");
    const outcome = judgeOne({ measure: potassium, atMost: 200, useEstimates: true }, estimated);
    expect(outcome).toMatchObject({ verdict: 'over', margin: -30, estimated: true, closeCall: true });
    expect(outcome.why).toMatch(/^Estimated 90 – 230 mg potassium/);
    expect(judgeOne({ measure: potassium, atLeast: 100, useEstimates: true }, estimated)).toMatchObject({ verdict: 'over', margin: -10 });
  });

  it('[YST-5] an estimated ratio is judged at the safe end of both', () => {
    const estimated = withAmounts(food(70, 150), {
      phosphorusMg: { kind: 'known', range: { lo: 80, hi: 120 }, source: 'estimated' },
      proteinG: { kind: 'known', range: { lo: 10, hi: 12 }, source: 'estimated' },
    });
    expect(judgeOne({ measure: phosphorusToProtein, atMost: 12, useEstimates: true }, estimated)).toMatchObject({
      verdict: 'fits',
      judged: { hi: 12 },
    });
    expect(judgeOne({ measure: phosphorusToProtein, atMost: 11.9, useEstimates: true }, estimated).verdict).toBe('over');
  });

  it('[YST-7] 1200 mg phosphorus to 70 g protein are 17.1 mg/g, over 16 (kidney facts, check value 47)', () => {
    const outcome = judgeOne({ measure: phosphorusToProtein, atMost: 16 }, food(70, 150, { phosphorusMg: 1200, proteinG: 70 }));
    expect(outcome.verdict).toBe('over');
    expect(outcome.judged?.hi).toBeCloseTo(17.142857, 5);
    expect(outcome.why).toContain('17.1 mg phosphorus per g protein');
  });

  it('[YST-7] 40 mg phosphorus to 0 g protein are not defined (kidney facts, check value 48)', () => {
    const outcome = judgeOne({ measure: phosphorusToProtein, atMost: 16 }, food(70, 150, { phosphorusMg: 40, proteinG: 0 }));
    expect(outcome.verdict).toBe("can't tell");
    expect(outcome.why).toContain('not defined at zero protein');
  });

  it('[YST-7] 480 mg sodium to 300 kcal are 1.60 mg/kcal, over 1 (kidney facts, check value 50; common practice)', () => {
    const outcome = judgeOne({ measure: { kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' }, atMost: 1 }, food(300, 480));
    expect(outcome).toMatchObject({ verdict: 'over', judged: { lo: 1.6, hi: 1.6 } });
  });

  it('[YST-8] below is strict, and "<5 mg" is under 5 mg', () => {
    expect(judgeOne({ measure: sodium, below: 5 }, food(70, 5))).toMatchObject({ verdict: 'over', margin: 0 });
    expect(judgeOne({ measure: sodium, below: 5 }, food(70, 0))).toMatchObject({ verdict: 'fits', closeCall: false });
    const lessThan = withAmounts(food(70, 0), { sodiumMg: { kind: 'known', range: { lo: 0, hi: 5 }, source: 'printed' } });
    expect(judgeOne({ measure: sodium, below: 5 }, lessThan)).toMatchObject({ verdict: 'fits', closeCall: false });
  });

  it('[YST-1] a third of a serving three times is the serving: binary dust decides nothing', () => {
    const eaten = food(70, 140);
    expect(
      judgeOne(
        { measure: sodium, atMost: 0.1 + 0.2 },
        withAmounts(eaten, { sodiumMg: { kind: 'known', printed: 0.3, range: { lo: 0.3, hi: 0.3 }, source: 'printed' } }),
      ).verdict,
    ).toBe('fits');
    const mix = judgePlate({
      food: eaten,
      plate: { ...alone, portion: { servings: 0.1 } },
      mixedWith: { food: eaten, portion: { servings: 0.2 } },
      yardstick: yardstickOf({ id: 't', measure: sodium, basis: 'as-eaten', atMost: 42, source: { kind: 'clinic', text: 'own' } }),
    });
    expect(mix.verdict).toBe('fits');
  });

  it('[YST-9] a source from memory, common practice or an own table says so', () => {
    const said = (kind: 'from-memory' | 'common-practice' | 'own-table') =>
      judgeOne({ measure: sodium, atMost: 1, source: { kind, text: 'X' } }, food(70, 150)).why;
    expect(said('from-memory')).toMatch(/\(X, from memory\)\.$/);
    expect(said('common-practice')).toMatch(/\(X, common practice\)\.$/);
    expect(said('own-table')).toMatch(/\(X, own table\)\.$/);
  });
});

describe('bases', () => {
  const slices = foodWith('Slices', { serving: { household: '4 slices', grams: 56 }, panel: { energyKcal: 70, sodiumMg: 150 } });
  const twoSlices: Plate = { ...withPasta, portion: { measure: 'slice', count: 2 } };

  it.each([
    ['per-serving', 150],
    ['as-eaten', 75],
    ['on-plate', 75],
  ] as const)('[YST-10] %s', (basis, judged) => {
    expect(judgeOne({ measure: sodium, basis, atMost: 1 }, slices, twoSlices).judged).toEqual({ lo: judged, hi: judged });
  });

  it('[YST-10] per 100 g the rounding of the serving mass counts (21 CFR 101.9(b)(7)(ii))', () => {
    // us-food-label check value 26: 140 mg in 30 g are 450.8 to 491.5 mg per 100 g.
    const outcome = judgeOne(
      { measure: sodium, basis: 'per-100-g', atMost: 470 },
      foodWith('Chips', { serving: { grams: 30 }, panel: { sodiumMg: 140 } }),
    );
    expect(outcome).toMatchObject({ verdict: 'fits', closeCall: true });
    expect(outcome.range?.lo).toBeCloseTo(450.8, 1);
    expect(outcome.range?.hi).toBeCloseTo(491.5, 1);
  });

  it("[YST-10] per 100 g without a mass is can't tell, and a measured mass makes it known", () => {
    const spoon = foodWith('Spread', { serving: { household: '1 scoop' }, panel: { sodiumMg: 140 } });
    expect(judgeOne({ measure: sodium, basis: 'per-100-g', atMost: 470 }, spoon).verdict).toBe("can't tell");
    expect(
      judgeOne({ measure: sodium, basis: 'per-100-g', atMost: 470 }, { ...spoon, gramsPerMeasure: { scoop: 28 } }).judged?.hi,
    ).toBeCloseTo(500, 9);
  });

  it("[YST-10] a test per day is can't tell on a plate", () => {
    expect(judgeOne({ measure: sodium, basis: 'per-day', atMost: 2300 }, slices).verdict).toBe("can't tell");
  });
});

describe('several tests', () => {
  const over: Test = { id: 'over', measure: sodium, basis: 'as-eaten', atMost: 10, source: { kind: 'clinic', text: 'own' } };
  const unknownTest: Test = { ...over, id: 'unknown', measure: potassium };
  const nearly: Test = { ...over, id: 'nearly', atMost: 145, slack: 10 };
  const close: Test = { ...over, id: 'close', atMost: 150 };
  const fits: Test = { ...over, id: 'fits', atMost: 500 };
  const judge = (tests: Test[], more = {}) => judgePlate({ food: food(70, 150), plate: alone, yardstick: yardstickOf(...tests), ...more });

  it("[YST-16] over > can't tell > nearly > fits, and the deciding test gives the reason", () => {
    expect(judge([fits, nearly, unknownTest, over])).toMatchObject({ verdict: 'over', why: expect.stringContaining('140 mg over') });
    expect(judge([fits, nearly, unknownTest]).verdict).toBe("can't tell");
    expect(judge([fits, nearly]).verdict).toBe('nearly');
    expect(judge([fits, fits]).verdict).toBe('fits');
  });

  it('[YST-16] one close call shakes "fits"; "over" stands as long as one test without it is over', () => {
    expect(judge([fits, close])).toMatchObject({ verdict: 'fits', closeCall: true });
    const closeOver: Test = { ...over, id: 'close-over', atMost: 147 };
    expect(judge([closeOver])).toMatchObject({ verdict: 'over', closeCall: true });
    expect(judge([closeOver, over])).toMatchObject({ verdict: 'over', closeCall: false });
  });

  it('[YST-17] a test that is off is judged only when switched on; with nothing to judge nothing is told', () => {
    const off = { ...over, off: true };
    expect(judge([off])).toMatchObject({ verdict: "can't tell", tests: [] });
    expect(judge([off], { switchedOn: ['over'] }).verdict).toBe('over');
    expect(judge([off, fits]).verdict).toBe('fits');
  });

  it('[YST-18] a yardstick for another setting says for which it is', () => {
    const yardstick: Yardstick = { ...yardstickOf(fits), settings: ['hemodialysis'] };
    const input = { food: food(70, 150), plate: alone, yardstick };
    expect(judgePlate({ ...input, setting: 'transplant' })).toMatchObject({
      verdict: "can't tell",
      why: expect.stringContaining('hemodialysis'),
    });
    expect(judgePlate({ ...input, setting: 'hemodialysis' }).verdict).toBe('fits');
    expect(judgePlate(input).verdict).toBe('fits');
  });
});
