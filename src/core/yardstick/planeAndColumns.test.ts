import { describe, expect, test } from 'vitest';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { planeRule } from './planeRule.ts';
import { isSodiumToEnergy } from './sodiumToEnergy.ts';
import { surveyColumnKeys, surveyColumns } from './surveyColumns.ts';
import type { Measure, Test } from './yardstick.ts';

const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;
const sodiumToEnergy: Measure = { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' };
const sodium: Measure = { kind: 'nutrient', nutrient: 'sodiumMg' };

const testOf = (measure: Measure, more: Partial<Test> = {}): Test => ({
  id: 't',
  measure,
  basis: 'on-plate',
  atMost: 0,
  source: { kind: 'clinic', text: 'own clinic' },
  ...more,
});

function withBread(panel: Record<string, number>): Plate {
  return { ...alone, companions: [{ food: foodWith('Bread', { panel }), portion: { servings: 2 } }] };
}

describe('the line on the plane of energy and sodium', () => {
  // Two slices of 80 kcal and 10 mg: 160 kcal and 20 mg; 160 − 20 mg are left.
  test('[SRV-8] what the companions bring is in the offset', () => {
    const bread = withBread({ energyKcal: 80, sodiumMg: 10 });
    expect(planeRule([testOf(sodiumToEnergy, { slack: 10 })], bread)).toEqual({ slope: 1, offset: 140, slack: 10 });
    expect(planeRule([testOf(sodiumToEnergy, { atMost: 50 })], bread)).toEqual({ slope: 1, offset: 190, slack: 0 });
    expect(planeRule([testOf(sodiumToEnergy, { basis: 'as-eaten' })], bread)).toEqual({ slope: 1, offset: 0, slack: 0 });
    expect(planeRule([testOf(sodium, { atMost: 600, slack: 5 })], bread)).toEqual({ slope: 0, offset: 580, slack: 5 });
  });

  test('[SRV-8] at most 2 mg sodium per kcal is a line of slope 2, whose slack is no sodium', () => {
    const ratio = testOf({ kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' }, { atMost: 2, slack: 0.5 });
    expect(planeRule([ratio], withBread({ energyKcal: 80, sodiumMg: 10 }))).toEqual({ slope: 2, offset: 300, slack: 0 });
  });

  test('[SRV-8] energy that nobody knows hides a line that takes it off, and no other', () => {
    const noEnergy = withBread({ sodiumMg: 10 });
    expect(planeRule([testOf(sodiumToEnergy)], noEnergy)).toBeNull();
    expect(planeRule([testOf(sodium, { atMost: 600 })], noEnergy)).toMatchObject({ slope: 0, offset: 580 });
    expect(planeRule([testOf(sodium, { atMost: 600 })], withBread({ energyKcal: 80 }))).toBeNull();
  });

  test('[SRV-8] no line: another nutrient, a percent, a floor, an additive, a basis of the label; the first that is one counts', () => {
    const none = [
      testOf({ kind: 'nutrient', nutrient: 'potassiumMg' }),
      testOf({ kind: 'difference', nutrient: 'sodiumMg', minus: 'proteinG' }),
      testOf({ kind: 'difference', nutrient: 'potassiumMg', minus: 'energyKcal' }),
      testOf({ kind: 'daily-value-percent', nutrient: 'sodiumMg' }),
      testOf({ kind: 'additive', class: 'phosphate' }),
      testOf(sodium, { basis: 'per-serving' }),
      { id: 'floor', measure: sodium, basis: 'on-plate', atLeast: 5, source: { kind: 'clinic', text: 'own clinic' } } as const,
    ];
    for (const one of none) expect(planeRule([one], alone)).toBeNull();
    expect(planeRule([...none, testOf(sodium, { atMost: 140 }), testOf(sodiumToEnergy)], alone)).toEqual({
      slope: 0,
      offset: 140,
      slack: 0,
    });
  });

  test('sodium against energy is that comparison alone', () => {
    expect(isSodiumToEnergy(sodiumToEnergy)).toBe(true);
    for (const measure of [
      sodium,
      { kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' },
      { kind: 'difference', nutrient: 'sodiumMg', minus: 'proteinG' },
      { kind: 'difference', nutrient: 'potassiumMg', minus: 'energyKcal' },
    ] as const)
      expect(isSodiumToEnergy(measure)).toBe(false);
  });
});

describe('the columns of a survey', () => {
  const cell = (key: (typeof surveyColumnKeys)[number], panel: Record<string, number | string>, servings = 1) =>
    surveyColumns[key].cell(foodWith('Beans', { panel }), { ...alone, portion: { servings } });

  test('[CLI-30] energy and sodium always stand, so they are no columns to choose', () => {
    expect(surveyColumnKeys).not.toContain('energyKcal');
    expect(surveyColumnKeys).not.toContain('sodiumMg');
    expect(surveyColumnKeys).toContain('phosphorusMgPerProteinG');
    expect(surveyColumns.potassiumMg).toMatchObject({ title: 'Potassium', unit: 'mg', nutrients: ['potassiumMg'] });
  });

  test('[CLI-30] a figure, a range, what is not printed', () => {
    expect(cell('potassiumMg', { potassiumMg: 350 })).toEqual({ text: '350 mg', figure: '350', low: 350 });
    expect(cell('potassiumMg', { potassiumMg: '0%' })).toEqual({ text: '0 – 94 mg', figure: '0–94', low: 0 });
    expect(cell('proteinG', { proteinG: 1.5 }, 3)).toEqual({ text: '4.5 g', figure: '4.5', low: 4.5 });
    // 4.5 g and no known upper end: a protein %DV is of corrected protein.
    expect(cell('proteinG', { proteinG: '10%' })).toEqual({ text: 'at least 4.5 g', figure: '4.5 or more', low: 4.5 });
    expect(cell('potassiumMg', {})).toEqual({ text: 'not on the label', figure: '', low: null });
  });

  test('[CLI-30] 120 mg phosphorus in 10 g protein are 12 mg/g; nothing is divided by nothing', () => {
    const beans = (phosphorusMg: number | string, proteinG: number) => cell('phosphorusMgPerProteinG', { phosphorusMg, proteinG });
    expect(beans(120, 10)).toEqual({ text: '12 mg/g', figure: '12', low: 12 });
    // 218.75 to 281.25 mg in 10 g.
    expect(beans('20%', 10)).toEqual({ text: '21.8 – 28.2 mg/g', figure: '21.8–28.2', low: 21.875 });
    expect(beans(120, 0)).toEqual({ text: 'none to divide by', figure: '', low: null });
    expect(cell('phosphorusMgPerProteinG', { phosphorusMg: 120 })).toMatchObject({ text: 'not on the label', low: null });
    expect(cell('phosphorusMgPerProteinG', { proteinG: 12 })).toMatchObject({ text: 'not on the label', low: null });
  });

  test('[CLI-30] an estimate says that it is one', () => {
    const beans = withAmounts(foodWith('Beans', { panel: { proteinG: 10 } }), {
      phosphorusMg: { kind: 'known', range: { lo: 66, hi: 99 }, source: 'estimated' },
    });
    expect(surveyColumns.phosphorusMg.cell(beans, alone)).toEqual({
      text: 'estimated 66 – 99 mg',
      figure: 'estimated 66–99',
      low: 66,
    });
    expect(surveyColumns.phosphorusMgPerProteinG.cell(beans, alone).text).toBe('estimated 6.6 – 9.9 mg/g');
    expect(surveyColumns.proteinG.cell(beans, alone).text).toBe('10 g');
  });
});
