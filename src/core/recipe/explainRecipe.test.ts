import { describe, expect, it } from 'vitest';
import { openHighsSolver } from '#adapters/solver/highsSolver.ts';
import { exactly } from '#core/quantity/interval.ts';
import { contradiction } from './contradiction.ts';
import { estimatedLabel } from './estimatedLabel.ts';
import { estimateMinerals } from './estimateMinerals.ts';
import { explainRecipe, questionForMaker } from './explainRecipe.ts';
import type { Conflict, MineralEstimate } from './minerals.ts';
import { labelOf, treeOf } from './recipeFixture.ts';
import { recipeModel } from './recipeModel.ts';
import { dryShare, mostWaterLost, typicalWaterLost } from './waterLost.ts';

const range = { sure: { lo: 10, hi: 30 }, likely: { lo: 12, mid: 20, hi: 28 } };
const none = { sure: exactly(0), likely: { lo: 0, mid: 0, hi: 0 } };
const plain: MineralEstimate = {
  kind: 'estimate',
  servingG: exactly(100),
  phosphorus: range,
  potassium: { sure: { lo: 100, hi: 300 }, likely: { lo: 120, mid: 200, hi: 280 } },
  addedPhosphorus: none,
  addedPotassium: none,
  absorbedPhosphorus: { lo: 4, hi: 20 },
  matchedShare: 0.625,
  phosphorusDrivers: [],
  potassiumDrivers: [],
  limits: [],
  conflicts: [],
};
const mass = 'Ingredients that make up about 63% of the mass are in the composition table.';
const driver = (name: string, share: number) => ({ name, mg: 100 * share, share });
const conflict = (meaning: Conflict['meaning'], by: number): Conflict => ({ meaning, by });

describe('explainRecipe', () => {
  it.each([
    ['Nearly all', [driver('MILK', 0.805)], 'milk (about 81 mg)'],
    ['Most', [driver('MILK', 0.8)], 'milk (about 80 mg)'],
    ['Most', [driver('MILK', 0.3), driver('EGGS', 0.21)], 'milk (about 30 mg) and eggs (about 21 mg)'],
    ['Much', [driver('MILK', 0.3), driver('EGGS', 0.2)], 'milk (about 30 mg) and eggs (about 20 mg)'],
    [
      'Nearly all',
      [driver('MILK', 0.4), driver('EGGS', 0.3), driver('RYE', 0.2), driver('OATS', 0.1)],
      'milk (about 40 mg), eggs (about 30 mg) and rye (about 20 mg)',
    ],
    [
      'Much',
      [driver('MILK', 0.15), driver('EGGS', 0.15), driver('RYE', 0.15), driver('OATS', 0.15)],
      'milk (about 15 mg), eggs (about 15 mg) and rye (about 15 mg)',
    ],
  ])('"%s" comes from the three that bring most', (lead, phosphorusDrivers, named) => {
    expect(explainRecipe({ ...plain, phosphorusDrivers })).toEqual([`${lead} of the likely phosphorus comes from ${named}.`, mass]);
  });

  it('[RCP-11] [RCP-15] tells limits and conflicts', () => {
    const estimate: MineralEstimate = {
      ...plain,
      limits: [{ name: 'SODIUM PHOSPHATES', atMostMg: 72.1, because: 'the law' }],
      conflicts: [
        conflict({ kind: 'printed', nutrient: 'sodiumMg', side: 'most' }, 12.39),
        conflict({ kind: 'printed', nutrient: 'proteinG', side: 'least' }, 1.29),
        conflict({ kind: 'threshold', name: 'SALT', percent: 2 }, 1),
        conflict({ kind: 'declared', name: 'OATS', percent: 60 }, 1),
        conflict({ kind: 'order', first: 'OATS', second: 'RYE' }, 1),
      ],
    };
    const [limit, , ...conflicts] = explainRecipe(estimate);
    // What is at most so much is rounded up, what is off by at least so much down.
    expect(limit).toBe('Sodium phosphates can add at most 73 mg phosphorus: the law.');
    expect(conflicts).toEqual([
      expect.stringMatching(/^In conflict: the ingredients bring at least 12\.3 mg more sodium than the panel allows/),
      expect.stringMatching(/^In conflict: the ingredients can bring 1\.2\d? g less protein than the panel prints/),
      'In conflict: no recipe keeps salt at 2% or less, so that limit was relaxed.',
      'In conflict: no recipe has 60% of oats, so that share was relaxed.',
      'In conflict: the statement contradicts itself.',
    ]);
  });

  it('asks the maker for both minerals, and for the additives where some are named', () => {
    expect(questionForMaker('Oat bar', '1 bar', plain)).toBe(
      'How many milligrams of phosphorus and of potassium are in one serving (1 bar) of Oat bar? Was that analysed or calculated?',
    );
    const limits = ['SODIUM PHOSPHATE', 'MONOCALCIUM PHOSPHATE'].map(name => ({ name, atMostMg: 1, because: 'the law' }));
    expect(questionForMaker('Oat bar', '1 bar', { ...plain, limits })).toContain(
      ', and how much of the phosphorus comes from the sodium phosphate and monocalcium phosphate?',
    );
  });
});

describe('estimatedLabel', () => {
  const label = labelOf('Milk.', 100, { proteinG: 3, potassiumMg: 150 });
  it('fills what is not printed and leaves what is', () => {
    const { amounts } = estimatedLabel(label, plain);
    expect(amounts.phosphorusMg).toEqual({ kind: 'known', likely: 20, range: { lo: 10, hi: 30 }, source: 'estimated' });
    expect(amounts.potassiumMg).toEqual(label.amounts.potassiumMg);
    expect(amounts.proteinG).toEqual(label.amounts.proteinG);
  });
  it('is the label itself without an estimate', () => {
    expect(estimatedLabel(label, undefined)).toBe(label);
    expect(estimatedLabel(label, { kind: 'cannot-be-bounded', because: 'no statement' })).toBe(label);
  });
  it('leaves unknown what the label prints and nobody can read', () => {
    const smudged = labelOf('Milk.', 100, { proteinG: 3, potassiumMg: 'smudge' });
    expect(estimatedLabel(smudged, plain).amounts.potassiumMg).toEqual(smudged.amounts.potassiumMg);
  });
});

describe('contradiction', () => {
  const facts = { servingG: exactly(100), printed: { proteinG: exactly(8), sodiumMg: exactly(100), fatG: exactly(2) } };
  const recipe = recipeModel(treeOf('Water, sugar'), 'other', facts);
  const printed = (nutrient: 'proteinG' | 'sodiumMg' | 'fatG', side: 'most' | 'least') =>
    recipe.meanings.find(meaning => meaning.kind === 'printed' && meaning.nutrient === nutrient && meaning.side === side)!;

  // "Off by more than a quarter and more than a gram"; the size of a line that is exact is the line itself.
  it.each([
    ['two grams of eight, a quarter', 'proteinG', 2, undefined],
    ['more than a quarter', 'proteinG', 2.01, 'too little protein'],
    ['one gram of two', 'fatG', 1, undefined],
    ['more than one gram of two', 'fatG', 1.01, 'too little total fat'],
    ['sodium, however much', 'sodiumMg', 90, undefined],
  ] as const)('[RCP-16] %s', (_, nutrient, by, words) => {
    const told = contradiction([conflict(printed(nutrient, 'least'), by)], recipe);
    expect(told).toBe(words && `the panel and the statement contradict each other: what is named brings ${words}`);
  });
  it('[RCP-16] names every line, and its side', () => {
    const told = contradiction([conflict(printed('proteinG', 'most'), 5), conflict(printed('fatG', 'least'), 2)], recipe);
    expect(told).toBe('the panel and the statement contradict each other: what is named brings too much protein and too little total fat');
    expect(contradiction([], recipe)).toBeUndefined();
  });
});

describe('water that left', () => {
  const facts = (fat: number, carbohydrate: number, protein: number) => ({
    servingG: { lo: 90, hi: 110 },
    printed: { fatG: exactly(fat), carbohydrateG: exactly(carbohydrate), proteinG: exactly(protein) },
  });
  it('[RCP-8] the dry share is fat, carbohydrate and protein over the mass, at most all of it', () => {
    expect(dryShare(facts(5, 20, 3))).toBeCloseTo(0.28, 9);
    expect(dryShare(facts(50, 60, 3))).toBe(1);
    // "Less than 1 g" has no upper end to count with: it counts as half a gram.
    const open = { ...facts(5, 20, 3).printed, proteinG: { lo: 0, hi: Number.POSITIVE_INFINITY } };
    expect(dryShare({ servingG: exactly(100), printed: open })).toBeCloseTo(0.255, 9);
    const wide = { ...facts(5, 20, 3).printed, proteinG: { lo: 2, hi: 2.5 } };
    expect(dryShare({ servingG: exactly(100), printed: wide })).toBeCloseTo(0.2725, 9);
  });
  it('[RCP-8] a figure that is not printed leaves room for all', () => {
    for (const key of ['fatG', 'carbohydrateG', 'proteinG'] as const) {
      const { [key]: _, ...printed } = facts(1, 1, 1).printed;
      expect(dryShare({ servingG: exactly(100), printed }), key).toBe(1);
    }
  });
  it('[RCP-7] a wet food was hardly boiled down, what is dry may have been anything', () => {
    // 0.1 and 1.3 times the dry share of at most 110 g; from 0.78 on twelve times the food.
    expect(mostWaterLost(facts(0, 10, 0))).toBeCloseTo(110 * 0.23, 9);
    expect(mostWaterLost(facts(0, 78, 0))).toBeCloseTo(110 * (0.1 + 1.3 * 0.78), 9);
    expect(mostWaterLost(facts(0, 79, 0))).toBeCloseTo(110 * 12, 9);
    // Typical: of the middle of the mass.
    expect(typicalWaterLost(facts(0, 10, 0))).toBeCloseTo(100 * 0.055, 9);
    expect(typicalWaterLost(facts(0, 78, 0))).toBeCloseTo(100 * (0.03 + 0.25 * 0.78), 9);
    expect(typicalWaterLost(facts(0, 79, 0))).toBeCloseTo(300, 9);
  });
});

describe('what an estimate is for', () => {
  it('[RCP-17] a panel for 100 g is for 100 g; as prepared, it is not for what the statement tells', async () => {
    const solver = await openHighsSolver();
    const label = labelOf('Milk.', 101, { fatG: 3, carbohydrateG: 5, proteinG: 3 });
    const per = (basis: 'per-100-g' | 'per-serving' | 'per-100-ml') =>
      estimateMinerals({ ...label, printed: { ...label.printed, basis } }, solver);
    expect(per('per-100-g')).toMatchObject({ kind: 'estimate', servingG: { lo: 100, hi: 100 } });
    expect(per('per-serving')).toMatchObject({ servingG: { lo: 100.5, hi: 101.5 } });
    expect(per('per-100-ml')).toEqual({
      kind: 'cannot-be-bounded',
      because: 'the label does not say what its panel’s quantity weighs in grams',
    });
    expect(estimateMinerals({ ...label, printed: { ...label.printed, state: 'as-prepared' } }, solver)).toEqual({
      kind: 'cannot-be-bounded',
      because: 'the panel is for the food as prepared, and the statement for what is in the package',
    });
  });
});
