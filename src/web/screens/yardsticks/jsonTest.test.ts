import { describe, expect, test } from 'vitest';
import { measureKinds } from '#core/yardstick/measures/measureKinds.ts';
import { kindChoices, measureOfKind, newTest, testBases } from './jsonTest.ts';

describe('a test of a yardstick in the form', () => {
  test('[YST-21] every kind of measure is offered', () => {
    expect(kindChoices.map(([kind]) => kind)).toEqual(Object.keys(measureKinds));
    expect(kindChoices).toContainEqual(['difference', 'one nutrient against another']);
  });

  test('[YST-21] another kind keeps nutrient and bound where it has a place for them', () => {
    const ratio = measureOfKind(newTest(), 'ratio');
    expect(ratio).toMatchObject({ measure: { kind: 'ratio', nutrient: 'potassiumMg', per: 'proteinG' }, atMost: 200, slack: 0 });
    const absence = measureOfKind({ ...ratio, basis: 'per-serving' }, 'additive');
    expect(absence).toMatchObject({ measure: { kind: 'additive', class: 'phosphate' }, basis: 'as-eaten', absent: true });
    expect(absence).not.toHaveProperty('atMost');
    expect(measureOfKind(absence, 'difference')).toMatchObject({
      measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' },
      atMost: 0,
    });
  });

  test('[YST-21] words are looked for in the portion or on the plate alone', () => {
    expect(testBases('ingredient').map(([basis]) => basis)).toEqual(['as-eaten', 'on-plate']);
    expect(testBases('ratio').map(([basis]) => basis)).toContain('per-100-g');
  });
});
