import { describe, expect, test } from 'vitest';
import { type MeasureKindName, measureKinds } from '#core/yardstick/measures/measureKinds.ts';
import { type YardstickJson, yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';
import { isSameShape } from '../../ui/draft/sameShape.ts';
import { kindChoices, newTest, otherNutrients, testBases, testOfKind, typedYardstick, yardstickOf } from './typedYardstick.ts';

type JsonTest = YardstickJson['tests'][number];
const source = { kind: 'clinic', text: 'agreed in 2031' } as const;
const whole = (tests: readonly JsonTest[]): YardstickJson => ({ id: 'y', title: 'mine', purpose: 'to try', settings: 'any', tests });
/** What is kept of a test that was opened in the form and not changed. */
const kept = (one: JsonTest): JsonTest | undefined => {
  const start = whole([one]);
  return yardstickOf(start, typedYardstick(start, false))?.tests[0];
};
const written = (typed: ReturnType<typeof newTest>): JsonTest | undefined =>
  yardstickOf(whole([]), { title: 'mine', purpose: '', tests: [typed] })?.tests[0];

describe('a yardstick in the form', () => {
  test('[YST-21] every kind of measure is offered', () => {
    expect(kindChoices.map(([kind]) => kind)).toEqual(Object.keys(measureKinds));
    expect(kindChoices).toContainEqual(['difference', 'one nutrient against another']);
  });

  test.each(kindChoices.map(([kind]) => kind))('[YST-21] a test of the kind %s that is not changed says the same as before', kind => {
    const measure = kind === 'ingredient' ? { kind, kin: 'garlic' } : measureKinds[kind].usual('calciumMg');
    const bound = kind === 'additive' || kind === 'ingredient' ? { absent: true as const } : { below: 12.5, slack: 2, useEstimates: true };
    const one: JsonTest = { id: 'a', measure, basis: 'on-plate', source, off: true, ...bound };
    expect(kept(one)).toEqual(one);
  });

  test('[YST-21] what a kind takes beside its first nutrient is kept', () => {
    const one: JsonTest = {
      id: 'a',
      measure: { kind: 'ratio', nutrient: 'phosphorusMg', per: 'energyKcal' },
      basis: 'as-eaten',
      atLeast: 1,
      slack: 0,
      source,
    };
    expect(kept(one)).toEqual(one);
    expect(otherNutrients(typedYardstick(whole([one]), false).tests[0]!.measure)).toEqual(['For each unit of']);
  });

  test('[YST-21] the rule of a claim stays with the basis that it belongs to', () => {
    const claim: JsonTest = {
      id: 'a',
      measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
      basis: 'per-reference-amount',
      atMost: 140,
      slack: 0,
      claimRule: 'us-sodium-claim',
      source,
    };
    expect(kept(claim)).toEqual(claim);
    const start = whole([claim]);
    const typed = typedYardstick(start, false);
    const moved = { ...typed, tests: typed.tests.map(one => ({ ...one, basis: 'as-eaten' as const })) };
    expect(yardstickOf(start, moved)?.tests[0]).not.toHaveProperty('claimRule');
    expect(yardstickFromJson(yardstickOf(start, moved)).issues).toEqual([]);
  });

  test('[YST-21] another kind keeps nutrient and bound where it has a place for them', () => {
    const ratio = testOfKind(newTest(), 'ratio');
    expect(written(ratio)).toMatchObject({ measure: { kind: 'ratio', nutrient: 'potassiumMg', per: 'proteinG' }, atMost: 200, slack: 0 });
    const absence = testOfKind({ ...ratio, basis: 'per-serving' }, 'additive');
    expect(written(absence)).toMatchObject({ measure: { kind: 'additive', class: 'phosphate' }, basis: 'as-eaten', absent: true });
    expect(written(absence)).not.toHaveProperty('atMost');
    expect(written(testOfKind(absence, 'difference'))).toMatchObject({
      measure: { kind: 'difference', nutrient: 'potassiumMg', minus: 'energyKcal' },
      atMost: 200,
    });
  });

  test('[YST-21] words are looked for in the portion or on the plate alone', () => {
    expect(testBases('ingredient').map(([basis]) => basis)).toEqual(['as-eaten', 'on-plate']);
    expect(testBases('ratio').map(([basis]) => basis)).toContain('per-100-g');
  });

  test.each([
    ['a figure is missing', { figure: '' }],
    ['a figure is none', { figure: 'some' }],
    ['the slack is none', { slack: 'little' }],
  ])('[YST-21] there is no yardstick while %s', (_, part) => {
    expect(written({ ...newTest(), ...part })).toBeUndefined();
    expect(written(testOfKind(newTest(), 'ingredient'))).toBeUndefined();
  });

  test('[YST-21] without a slack nothing over the bound is nearly', () => {
    expect(written({ ...newTest(), slack: '' })).toMatchObject({ atMost: 200, slack: 0 });
  });

  test('[WEB-4] a draft fits the form whatever kinds its tests are of', () => {
    const kinds: readonly MeasureKindName[] = kindChoices.map(([kind]) => kind);
    const typed = kinds.map(kind => testOfKind(newTest(), kind));
    for (const one of typed) for (const other of typed) expect(isSameShape([one], [other])).toBe(true);
  });
});
