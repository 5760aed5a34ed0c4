import { describe, expect, test } from 'vitest';
import type { PrintedLabel } from '#core/label/label.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { judgePlate } from './judgePlate.ts';
import { referencePortion } from './referenceAmount.ts';
import { savedSurveyFromJson, savedSurveyToJson } from './savedSurvey.ts';
import { addAmounts, companionTotals, nothing } from './served.ts';
import { shownClass } from './shownClass.ts';
import type { ClassScale, Test, Verdict, Yardstick } from './yardstick.ts';

const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;
const source = { kind: 'clinic', text: 'own clinic' } as const;
const sodium = (more: Partial<Test>): Test => ({
  id: 'sodium',
  measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
  basis: 'as-eaten',
  source,
  ...more,
});

function yardstickOf(tests: readonly Test[], more: Partial<Yardstick> = {}): Yardstick {
  return { id: 'own', title: 'own', purpose: '', tests, classScales: [], settings: 'any', cautions: [], ...more };
}

function judge(tests: readonly Test[], printed: Partial<PrintedLabel>, plate: Plate = alone): Verdict {
  return judgePlate({ food: foodWith('Food', printed), plate, yardstick: yardstickOf(tests) });
}

describe('bases', () => {
  test('[YST-10] per 100 g and per 100 mL by the label’s own mass and volume, else by what somebody measured', () => {
    const judged = (basis: Test['basis'], printed: Partial<PrintedLabel>, more = {}) => {
      const food = foodWith('Food', { panel: { sodiumMg: 140 }, ...printed }, more);
      return judgePlate({ food, plate: alone, yardstick: yardstickOf([sodium({ basis, atMost: 100 })]) }).tests[0]!.judged?.hi;
    };
    expect(judged('per-100-g', { serving: { grams: 50 } })).toBe(280);
    expect(judged('per-100-ml', { serving: { milliliters: 200 } })).toBe(70);
    // 200 mL of 1.25 g per mL weigh 250 g.
    expect(judged('per-100-g', { serving: { milliliters: 200 } }, { densityGPerMl: 1.25 })).toBeCloseTo(56, 9);
    expect(judged('per-100-ml', { serving: { grams: 250 } }, { densityGPerMl: 1.25 })).toBeCloseTo(70, 9);
    expect(judged('per-100-ml', { serving: { grams: 250 } })).toBeUndefined();
    expect(judged('per-serving', { serving: { grams: 250 } })).toBe(140);
  });

  test('[YST-4] the words of a wide figure are those of the food, on each basis', () => {
    for (const basis of ['per-serving', 'per-100-g', 'as-eaten', 'on-plate'] as const) {
      const [outcome] = judge([sodium({ basis, atMost: 1 })], { panel: { sodiumMg: '6%' }, serving: { grams: 100 } }).tests;
      expect(outcome?.why).toContain('judged at the high end of what the label prints as “6%”');
    }
  });

  // 21 CFR 101.61(b): the reference amount of 15 g, and 50 g.
  test('[YST-11] of two bases with the same word the one with less to spare is told', () => {
    const claim = (sodiumMg: number) =>
      judge([sodium({ basis: 'per-reference-amount', atMost: 140, claimRule: 'us-sodium-claim' })], {
        serving: { grams: 15 },
        panel: { sodiumMg },
        referenceAmount: { grams: 15 },
      }).tests[0]!;
    expect(claim(30)).toMatchObject({ verdict: 'fits', margin: 40, why: expect.stringContaining('per 50 g') });
    expect(claim(150)).toMatchObject({ verdict: 'over', margin: -360 });
    // 100 mg of 60 g: 100 mg in the reference amount, 83 mg in 50 g; only for 30 g and less are both asked.
    const large = judge([sodium({ basis: 'per-reference-amount', atMost: 140, claimRule: 'us-sodium-claim' })], {
      serving: { grams: 60 },
      panel: { sodiumMg: 100 },
      referenceAmount: { grams: 60 },
    }).tests[0]!;
    expect(large.why).toContain('per reference amount');
  });

  test('[YST-11] reference amounts: by key, in grams or milliliters, a meal without one', () => {
    expect(referencePortion('soup')).toEqual({ portion: { grams: 245 }, mealOrMainDish: false, small: false });
    expect(referencePortion('no such food')).toBeUndefined();
    expect(referencePortion(undefined)).toBeUndefined();
    expect(referencePortion({ grams: 30 })).toEqual({ portion: { grams: 30 }, mealOrMainDish: false, small: true });
    expect(referencePortion({ grams: 30.1 })?.small).toBe(false);
    expect(referencePortion({ milliliters: 30 })).toEqual({ portion: { milliliters: 30 }, mealOrMainDish: false, small: true });
    expect(referencePortion({ milliliters: 240 })?.small).toBe(false);
    expect(referencePortion({})).toBeUndefined();
    expect(referencePortion({ kind: 'meal' })).toEqual({ mealOrMainDish: true, small: false });
    expect(referencePortion({ kind: 'main-dish', grams: 20 })).toEqual({ portion: { grams: 20 }, mealOrMainDish: true, small: true });
  });

  test('[YST-11] a meal without an amount of its own has no reference amount, but its claim is per 100 g', () => {
    const meal = { serving: { grams: 300 }, panel: { sodiumMg: 300 }, referenceAmount: { kind: 'meal' } } as const;
    const told = (more: Partial<Test>) => judge([sodium({ basis: 'per-reference-amount', ...more })], meal).tests[0]!;
    expect(told({ atMost: 140 }).why).toContain('no reference amount is known for Food');
    expect(told({ atMost: 140, claimRule: 'us-sodium-claim' }).why).toContain('100 mg sodium per 100 g');
    // "Free" is per serving for a meal (101.61(b)(1)).
    expect(told({ below: 5, claimRule: 'us-sodium-claim' }).why).toContain('300 mg sodium per serving');
  });
});

// A test on the label alone judges both labels of a mix (YST-32).
test.each([
  [400, 0],
  [0, 400],
])('[YST-32] of %d and %d mg a serving the worse one counts, whichever comes first', (one, other) => {
  const [food, unsalted] = [one, other].map(sodiumMg => foodWith('Food', { panel: { sodiumMg } })) as [PlateFood, PlateFood];
  const yardstick = yardstickOf([sodium({ basis: 'per-serving', atMost: 140 })]);
  const [outcome] = judgePlate({ food, plate: alone, yardstick, mixedWith: { food: unsalted, portion: { servings: 1 } } }).tests;
  expect(outcome).toMatchObject({ verdict: 'over', margin: -260 });
});

describe('sums of what is eaten', () => {
  const estimated = withAmounts(foodWith('Beans', {}), { sodiumMg: { kind: 'known', range: { lo: 10, hi: 20 }, source: 'estimated' } });

  test('[YST-5] an estimate counts where it may be used, and is unknown where it may not', () => {
    const totals = companionTotals([{ food: estimated, portion: { servings: 2 } }]);
    const known = { judged: { lo: 20, hi: 40 }, range: { lo: 20, hi: 40 }, estimated: true, missing: [] };
    const missing = [{ of: 'Beans', reason: 'not-printed' }];
    // Asked in either order, and twice: what was summed once is kept apart for both.
    for (const _ of [1, 2]) {
      expect(totals.total('sodiumMg', true)).toEqual(known);
      expect(totals.total('sodiumMg', false)).toEqual({ ...nothing, missing });
    }
    expect(totals.total('sodiumMg', true)).toBe(totals.total('sodiumMg', true));
  });

  test('[YST-3] what is missing tells why: the amount, or how much the portion is', () => {
    const noPortion = { kind: 'unknown', reason: 'no-measure-mass' } as const;
    const printed = foodWith('Ham', { panel: { sodiumMg: 140 } });
    const why = (food: typeof printed, factor: Parameters<typeof addAmounts>[3]) =>
      addAmounts(nothing, food.name, food.label.amounts, factor, 'sodiumMg', false).missing[0]?.reason;
    expect(why(printed, noPortion)).toBe('no-measure-mass');
    expect(why(foodWith('Ham', {}), noPortion)).toBe('not-printed');
    expect(why(foodWith('Ham', { panel: { sodiumMg: 'O mg' } }), 1)).toBe('not-legible');
    expect(why(estimated, 1)).toBe('not-printed');
    expect(why(printed, 1)).toBeUndefined();
  });
});

describe('joined', () => {
  test('[YST-16] the first of the gravest tests gives the reason; rounding of one test shakes a fit, of all of them another word', () => {
    // 150 mg are 145 to 155 mg.
    const close = (id: string, atMost: number) => sodium({ id, atMost });
    const joined = (...bounds: number[]) =>
      judge(
        bounds.map((atMost, at) => close(`t${at}`, atMost)),
        { panel: { sodiumMg: 150 } },
      );
    expect(joined(100, 90)).toMatchObject({ verdict: 'over', closeCall: false, why: expect.stringContaining('at most 100 mg') });
    expect(joined(500, 152)).toMatchObject({ verdict: 'fits', closeCall: true });
    expect(joined(500, 400)).toMatchObject({ verdict: 'fits', closeCall: false });
    expect(joined(148, 100)).toMatchObject({ verdict: 'over', closeCall: false });
    expect(joined(148, 147)).toMatchObject({ verdict: 'over', closeCall: true });
    expect(judge([], { panel: {} })).toEqual({
      yardstickId: 'own',
      verdict: "can't tell",
      closeCall: false,
      estimated: false,
      why: 'Nothing is judged until a bound is switched on.',
      tests: [],
      classes: [],
    });
  });

  test('[YST-16] an estimate shakes a fit; another word only where every test with it is estimated', () => {
    const beans = withAmounts(foodWith('Beans', { panel: { sodiumMg: 150 } }), {
      potassiumMg: { kind: 'known', range: { lo: 100, hi: 200 }, source: 'estimated' },
    });
    const joined = (sodiumUpTo: number, potassiumUpTo: number) => {
      const potassium = sodium({
        id: 'k',
        measure: { kind: 'nutrient', nutrient: 'potassiumMg' },
        atMost: potassiumUpTo,
        useEstimates: true,
      });
      const { verdict, estimated } = judgePlate({
        food: beans,
        plate: alone,
        yardstick: yardstickOf([sodium({ atMost: sodiumUpTo }), potassium]),
      });
      return [verdict, estimated];
    };
    expect([joined(500, 300), joined(500, 150), joined(100, 300), joined(100, 150)]).toEqual([
      ['fits', true],
      ['over', true],
      ['over', false],
      ['over', false],
    ]);
  });

  test('[YST-18] a yardstick for other settings says for which it is', () => {
    const yardstick = yardstickOf([sodium({ atMost: 500 })], { settings: ['hemodialysis', 'transplant'] });
    const judged = (setting: 'hemodialysis' | 'peritoneal-dialysis') =>
      judgePlate({ food: foodWith('Food', { panel: { sodiumMg: 150 } }), plate: alone, yardstick, setting });
    expect(judged('hemodialysis').verdict).toBe('fits');
    expect(judged('peritoneal-dialysis')).toEqual({
      yardstickId: 'own',
      verdict: "can't tell",
      closeCall: false,
      estimated: false,
      why: "Can't tell: “own” is for hemodialysis, transplant, not for peritoneal-dialysis.",
      tests: [],
      classes: [],
    });
  });
});

describe('classes and saved surveys', () => {
  const scale = (more: Partial<ClassScale> = {}): ClassScale => ({
    id: 'k',
    nutrient: 'potassiumMg',
    basis: 'as-eaten',
    classes: [
      { name: 'low', upTo: 100 },
      { name: 'medium', upTo: 200 },
      { name: 'high', upTo: 300 },
    ],
    source,
    ...more,
  });
  const classOf = (range: readonly [number, number] | undefined, more?: Partial<ClassScale>) => {
    const food = withAmounts(foodWith('Food', {}), {
      ...(range === undefined ? {} : { potassiumMg: { kind: 'known', range: { lo: range[0], hi: range[1] }, source: 'printed' } as const }),
    });
    return shownClass(scale(more), {
      surveyed: [{ part: { food, portion: { servings: 1 } }, factor: 1 }],
      companions: companionTotals([]),
    });
  };

  test('[YST-19] cut-offs are inclusive, a range that crosses one has both names, one that crosses more has its ends', () => {
    const names = (
      [
        [100, 100],
        [100.1, 200],
        [99, 101],
        [99, 201],
        [299, 301],
        [400, 400],
      ] as const
    ).map(range => classOf(range).name);
    expect(names).toEqual(['low', 'medium', 'low or medium', 'low to high', 'high', 'high']);
    expect(classOf([99, 201]).why).toBe('Potassium 99 – 201 mg as eaten: low to high (own clinic).');
    // A third of 300 three times is 300.
    expect(classOf([0.1 + 0.2, 0.1 + 0.2], { classes: [{ name: 'low', upTo: 0.3 }, { name: 'high' }] }).name).toBe('low');
  });

  test('[YST-19] what is not known is no class, and says why; an estimate is not classed', () => {
    const estimated = withAmounts(foodWith('Food', {}), { potassiumMg: { kind: 'known', range: { lo: 1, hi: 2 }, source: 'estimated' } });
    const served = { surveyed: [{ part: { food: estimated, portion: { servings: 1 } }, factor: 1 }], companions: companionTotals([]) };
    expect(shownClass(scale(), served).name).toBe('unknown');
    expect(classOf(undefined)).toEqual({
      scaleId: 'k',
      name: 'unknown',
      why: 'Potassium is unknown as eaten (Food: not on the label; own clinic).',
    });
    expect(classOf([1, 2], { basis: 'per-day' })).toMatchObject({
      name: 'unknown',
      why: 'Potassium: a day is judged on a menu, and this is one plate (own clinic).',
    });
  });

  test('a saved survey is read as it was written, and refused with the place of each fault', () => {
    const survey = { id: 's', title: 'x'.repeat(300), category: 'soups', plateId: 'p', yardstickId: 'y' };
    const { value, issues } = savedSurveyFromJson(survey);
    expect(issues).toEqual([]);
    expect(savedSurveyToJson(value!)).toEqual({ ...survey, switchedOn: [] });
    for (const title of ['', 'x'.repeat(301)]) {
      const refused = savedSurveyFromJson({ ...survey, title });
      expect(refused.value).toBeUndefined();
      expect(refused.issues[0]?.place.heading).toBe('title');
    }
  });
});
