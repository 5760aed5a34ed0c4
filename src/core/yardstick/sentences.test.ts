/** Whole sentences: each measure, each side of a bound, ranges, estimates and what is missing. Ranges by the rounding of 21 CFR 101.9(c). */
import { describe, expect, test } from 'vitest';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { judgePlate } from './judgePlate.ts';
import { classScaleText, testText } from './testText.ts';
import type { Measure, Test, TestVerdict } from './yardstick.ts';

const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;
const withPasta = builtInPlates.find(({ id }) => id === 'with-dry-pasta')!;
const pasta = 'Dry pasta, cooked without salt';

const sodium: Measure = { kind: 'nutrient', nutrient: 'sodiumMg' };
const potassium: Measure = { kind: 'nutrient', nutrient: 'potassiumMg' };
const protein: Measure = { kind: 'nutrient', nutrient: 'proteinG' };
const sodiumToEnergy: Measure = { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' };
const potassiumToProtein: Measure = { kind: 'difference', nutrient: 'potassiumMg', minus: 'proteinG' };
const phosphorusToProtein: Measure = { kind: 'ratio', nutrient: 'phosphorusMg', per: 'proteinG' };

type Bound = Partial<Test> & Pick<Test, 'measure'>;

const testOf = (bound: Bound): Test => ({ id: 't', basis: 'as-eaten', source: { kind: 'clinic', text: 'own clinic' }, ...bound });

function judge(
  bound: Bound,
  panel: Record<string, number | string>,
  { plate = alone, potassiumEstimate }: { readonly plate?: Plate; readonly potassiumEstimate?: Interval } = {},
): TestVerdict {
  const printed = foodWith('Slices', { panel });
  const food =
    potassiumEstimate === undefined
      ? printed
      : withAmounts(printed, { potassiumMg: { kind: 'known', range: potassiumEstimate, source: 'estimated' } });
  const yardstick = { id: 'y', title: 'y', purpose: '', tests: [testOf(bound)], classScales: [], settings: 'any', cautions: [] } as const;
  return judgePlate({ food, plate, yardstick }).tests[0]!;
}

describe('sodium against energy, 150 mg against 100 kcal', () => {
  const start = '150 mg sodium against 100 kcal as eaten';
  test.each<[Bound, string, string]>([
    [{ measure: sodiumToEnergy, atMost: 0 }, 'no more than energy', ': 50 mg over'],
    [
      { measure: sodiumToEnergy, atMost: -50 },
      'at least 50 less than energy',
      ', sodium in mg at least 50 less than energy in kcal: 100 mg over',
    ],
    [
      { measure: sodiumToEnergy, atMost: 70 },
      'at most 70 more than energy',
      ', sodium in mg at most 70 more than energy in kcal: 20 mg to spare',
    ],
    [{ measure: sodiumToEnergy, atLeast: 0 }, 'no less than energy', ', sodium in mg no less than energy in kcal: 50 mg to spare'],
    [
      { measure: sodiumToEnergy, atLeast: 70 },
      'at least 70 more than energy',
      ', sodium in mg at least 70 more than energy in kcal: 20 mg short',
    ],
    [
      { measure: sodiumToEnergy, atLeast: -50 },
      'at most 50 less than energy',
      ', sodium in mg at most 50 less than energy in kcal: 100 mg to spare',
    ],
    [{ measure: sodiumToEnergy, below: 0 }, 'less than energy', ', sodium in mg less than energy in kcal: 50 mg over'],
    [
      { measure: sodiumToEnergy, below: 70 },
      'less than 70 above energy',
      ', sodium in mg less than 70 above energy in kcal: 20 mg to spare',
    ],
    [{ measure: sodiumToEnergy, below: -50 }, 'more than 50 below energy', ', sodium in mg more than 50 below energy in kcal: 100 mg over'],
  ])('[YST-9] %j: sodium %s', (bound, words, end) => {
    expect(judge(bound, { sodiumMg: 150, energyKcal: 100 }).why).toBe(`${start}${end} (own clinic).`);
    expect(testText(testOf(bound))).toBe(`Sodium in mg ${words} in kcal in the portion as eaten (own clinic)`);
  });
});

describe('one sentence', () => {
  const by = (servings: number) => ({ plate: { ...alone, portion: { servings } } });
  const estimate = { potassiumEstimate: { lo: 150, hi: 250 } };
  const rows: readonly (readonly [Bound, Record<string, number | string>, Parameters<typeof judge>[2], string])[] = [
    // 150 mg are 145 to 155 mg.
    [
      { measure: sodium, atMost: 150, basis: 'per-serving' },
      { sodiumMg: 150 },
      {},
      '150 mg sodium per serving, at most 150 mg: 0 mg to spare; rounding: 5 mg to spare … 5 mg over',
    ],
    [
      { measure: sodium, below: 150 },
      { sodiumMg: 150 },
      {},
      '150 mg sodium as eaten, under 150 mg: at the bound; rounding: 5 mg to spare … 5 mg over',
    ],
    [
      { measure: sodium, atLeast: 200, slack: 50 },
      { sodiumMg: 150 },
      {},
      '150 mg sodium as eaten, at least 200 mg: 50 mg short, within the slack of 50 mg',
    ],
    [{ measure: sodium, atLeast: 200, slack: 49 }, { sodiumMg: 150 }, {}, '150 mg sodium as eaten, at least 200 mg: 50 mg short'],
    // One decimal more where the whole figures would not give the margin. 140 mg are 137.5 to 145 mg, 137.9 to 145.4 in 1.003 servings.
    [
      { measure: sodium, atMost: 140 },
      { sodiumMg: 140 },
      by(1.003),
      '140.4 mg sodium as eaten, at most 140 mg: 0.4 mg over; rounding: 2.1 mg to spare … 5.5 mg over',
    ],
    [
      { measure: sodium, atMost: 141 },
      { sodiumMg: 140 },
      by(1),
      '140 mg sodium as eaten, at most 141 mg: 1 mg to spare; rounding: 3.5 mg to spare … 4 mg over',
    ],
    [{ measure: protein, atMost: 8 }, { proteinG: 7.5 }, {}, '7.5 g protein as eaten, at most 8 g: 0.5 g to spare'],
    // 2 % of potassium is 47 to 141 mg (21 CFR 101.9(c)(8)(iii)): the unsafe end counts.
    [
      { measure: potassium, atMost: 100 },
      { potassiumMg: '2%' },
      {},
      '47 – 141 mg potassium as eaten, at most 100 mg: 41 mg over; rounding: 53 mg to spare … 41 mg over; judged at the high end of what the label prints as “2%”',
    ],
    [
      { measure: potassium, atLeast: 100 },
      { potassiumMg: '2%' },
      {},
      '47 – 141 mg potassium as eaten, at least 100 mg: 53 mg short; rounding: 41 mg to spare … 53 mg short; judged at the low end of what the label prints as “2%”',
    ],
    [
      { measure: protein, atLeast: 4 },
      { proteinG: '10%' },
      {},
      'At least 4.5 g protein as eaten, at least 4 g: 0.5 g to spare; judged at the low end of what the label prints as “10%”',
    ],
    [
      { measure: potassium, atMost: 200, useEstimates: true },
      {},
      estimate,
      'Estimated 150 – 250 mg potassium as eaten, at most 200 mg: 50 mg over; rounding: 50 mg to spare … 50 mg over; judged at the high end of the estimate',
    ],
    [
      { measure: potassium, atLeast: 100, useEstimates: true },
      {},
      estimate,
      'Estimated 150 – 250 mg potassium as eaten, at least 100 mg: 50 mg to spare; judged at the low end of the estimate',
    ],
    [
      { measure: potassium, atMost: 0, basis: 'on-plate' },
      { potassiumMg: 100 },
      { plate: withPasta },
      `100 mg potassium on the plate, at most 0 mg: at least 100 mg over; potassium of ${pasta} is unknown: no label has been read`,
    ],
    // 120 mg are 115 to 125 mg, 10 g are 9.5 to 10.5 g: 10.95 to 13.16 mg per g.
    [
      { measure: phosphorusToProtein, atMost: 12 },
      { phosphorusMg: 120, proteinG: 10 },
      {},
      '12 mg phosphorus per g protein (120 mg to 10 g) as eaten, at most 12 mg per g: 0 mg per g to spare; rounding: 1.1 mg per g to spare … 1.2 mg per g over',
    ],
    [
      { measure: phosphorusToProtein, atMost: 9 },
      { phosphorusMg: 125, proteinG: 12 },
      {},
      '10.42 mg phosphorus per g protein (125 mg to 12 g) as eaten, at most 9 mg per g: 1.42 mg per g over',
    ],
    [
      { measure: phosphorusToProtein, atMost: 15 },
      { phosphorusMg: 125, proteinG: 12 },
      {},
      '10.4 mg phosphorus per g protein (125 mg to 12 g) as eaten, at most 15 mg per g: 4.6 mg per g to spare',
    ],
    // 140 mg of 2300 mg are 6.1 %.
    [
      { measure: { kind: 'daily-value-percent', nutrient: 'sodiumMg' }, atMost: 5 },
      { sodiumMg: 140 },
      {},
      '6% of the Daily Value of sodium (140 mg) as eaten, at most 5%: 1% over',
    ],
  ];
  test.each(rows)('[YST-9] %j of %j', (bound, panel, more, sentence) => {
    expect(judge(bound, panel, more).why).toBe(`${sentence} (own clinic).`);
  });

  const unknown: readonly (readonly [Bound, Record<string, number | string>, Parameters<typeof judge>[2], string, string])[] = [
    [{ measure: potassium, atMost: 200 }, {}, estimate, 'potassium is unknown (not on the label)', 'at most 200 mg as eaten'],
    [{ measure: protein, atMost: 8 }, { proteinG: '10%' }, {}, 'at least 4.5 g protein, and no end of it is known', 'at most 8 g as eaten'],
    [
      { measure: potassium, atMost: 300, basis: 'on-plate' },
      { potassiumMg: 100 },
      { plate: withPasta },
      `potassium of ${pasta} is unknown (no label has been read); known so far: 100 mg potassium`,
      'at most 300 mg on the plate',
    ],
    [
      { measure: potassiumToProtein, atMost: 0, basis: 'on-plate' },
      { potassiumMg: 100, proteinG: 3 },
      { plate: withPasta },
      `potassium and protein of ${pasta} are unknown (no label has been read); known so far: 100 mg potassium against 3 g protein`,
      'potassium in mg no more than protein in g on the plate',
    ],
    [
      { measure: phosphorusToProtein, atMost: 12 },
      { phosphorusMg: 40, proteinG: 0 },
      {},
      'phosphorus to protein is not defined at zero protein',
      'at most 12 mg per g as eaten',
    ],
    [
      { measure: phosphorusToProtein, atMost: 12 },
      { phosphorusMg: 40 },
      {},
      'protein is unknown (not on the label)',
      'at most 12 mg per g as eaten',
    ],
    [
      { measure: phosphorusToProtein, atMost: 12 },
      { proteinG: 4 },
      {},
      'phosphorus is unknown (not on the label)',
      'at most 12 mg per g as eaten',
    ],
    [
      { measure: { kind: 'daily-value-percent', nutrient: 'potassiumMg' }, atMost: 6, basis: 'on-plate' },
      { potassiumMg: '4%' },
      { plate: withPasta },
      `potassium of ${pasta} is unknown (no label has been read); known so far: 3 – 5% of the Daily Value of potassium (141 – 235 mg)`,
      'at most 6% on the plate',
    ],
  ];
  test.each(unknown)('[YST-3] %j of %j cannot be told', (bound, panel, more, reason, words) => {
    const outcome = judge(bound, panel, more);
    expect(outcome.why).toBe(`Can't tell: ${reason}; bound: ${words} (own clinic).`);
    expect(outcome).toMatchObject({ verdict: "can't tell", closeCall: false, estimated: false, reason: reason.split(';')[0] });
    for (const key of ['margin', 'marginRange'] as const) expect(outcome[key]).toBeUndefined();
  });

  test('[YST-10] per day nothing is told of a plate', () => {
    const outcome = judge({ measure: sodium, atMost: 140, basis: 'per-day' }, { sodiumMg: 140 });
    expect(outcome).toMatchObject({ verdict: "can't tell", closeCall: false, estimated: false });
    expect(outcome.why).toBe("Can't tell: a day is judged on a menu, and this is one plate (own clinic).");
  });
});

describe('a test in words', () => {
  test.each<[Bound, string]>([
    [
      { measure: sodium, atMost: 140, slack: 10, basis: 'per-serving' },
      'Sodium per serving: at most 140 mg; nearly: over by no more than 10 mg (own clinic)',
    ],
    [
      { measure: protein, atLeast: 8, slack: 1, basis: 'per-day' },
      'Protein per day: at least 8 g; nearly: short by no more than 1 g (own clinic)',
    ],
    [
      { measure: potassium, atMost: 200, useEstimates: true, off: true, basis: 'on-plate' },
      'Potassium on the plate: at most 200 mg; estimates may be used, at their safe end; judged only when switched on (own clinic)',
    ],
    [{ measure: phosphorusToProtein, below: 12, basis: 'per-100-g' }, 'Phosphorus to protein per 100 g: under 12 mg per g (own clinic)'],
    [
      { measure: { kind: 'additive', class: 'phosphate' }, absent: true },
      'Phosphate additives in the portion as eaten: none named on the label (own clinic)',
    ],
    [
      { measure: { kind: 'ingredient', kin: 'tree-nut' }, absent: true, basis: 'on-plate' },
      'Tree-nut on the plate: none named on the label (own clinic)',
    ],
  ])('[YST-9] %j', (bound, words) => {
    expect(testText(testOf(bound))).toBe(words);
  });

  test('[YST-19] classes in words, the last without an end', () => {
    expect(
      classScaleText({
        id: 'c',
        nutrient: 'potassiumMg',
        basis: 'as-eaten',
        classes: [{ name: 'low', upTo: 100 }, { name: 'high' }],
        source: { kind: 'clinic', text: 'own clinic' },
      }),
    ).toBe('potassium mg in the portion as eaten: low up to 100, high above (own clinic)');
  });
});
