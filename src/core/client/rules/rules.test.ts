import { expect, test } from 'vitest';
import { careFigureIds, careFigures } from './careFigures.ts';
import { careFigure } from './careRules.ts';
import { careRulesFromJson } from './careRulesJson.ts';
import { chartSources, sourceWords } from './source.ts';
import { commonPractice, kdoqi2020 } from './sources.ts';

test('[CLT-70] a clinic may set every figure from its least to its most, and nothing beyond', () => {
  const isTaken = (id: string, value: number) => careRulesFromJson([{ id, value, by: 'A. N.', on: '2026-01-01' }]).value !== undefined;
  for (const id of careFigureIds) {
    const { lo, hi, usual } = careFigures[id];
    expect(
      [lo, usual, hi].map(value => isTaken(id, value)),
      id,
    ).toEqual([true, true, true]);
    expect(
      [lo - 0.01, hi + 0.01].map(value => isTaken(id, value)),
      id,
    ).toEqual([false, false]);
  }
  expect(isTaken('no-such-figure', 5)).toBe(false);
  expect(careRulesFromJson([{ id: 'age.dry-weight', value: 1001, by: 'A. N.', on: '2026-01-01' }]).issues).toMatchObject([
    { code: 'figure-outside', place: { heading: '[0].value' }, found: '1001', expected: '1 to 1000 days' },
  ]);
});

// Facts 4.3, and care rules 2: the figures from which somebody is told.
test.each([
  ['contact.potassium-emergency', 6.5],
  ['contact.potassium-same-day', 6],
  ['contact.potassium-within-days', 5.5],
  ['contact.potassium-hemodialysis', 5.6],
  ['contact.potassium-low', 3],
  ['contact.potassium-very-low', 2.5],
  ['contact.calcium-high', 12],
  ['contact.calcium-low', 7.5],
  ['contact.phosphate-low', 1],
  ['contact.phosphate-low-new-feeding', 2],
  ['contact.magnesium-low', 1],
  ['contact.magnesium-high', 4.9],
  ['contact.bicarbonate-low', 15],
  ['contact.sodium-very-low', 120],
  ['contact.sodium-low', 125],
  ['contact.sodium-high', 155],
  ['contact.glucose-low', 54],
  ['contact.glucose-high', 360],
  ['contact.hemoglobin-low', 7],
  ['contact.weight-gain-hemodialysis', 4.5],
  ['contact.weight-gain-2-days', 2],
  ['alarm.now', 7],
  ['alarm.glucose-now', 2],
  ['alarm.asked', 45],
  ['alarm.hemoglobin-drop', 60],
] as const)('[CLT-30] %s is %d until the clinic sets another, and then its newest', (id, usual) => {
  const set = (value: number) => ({ id, value, by: 'A. N.', on: '2026-01-01' });
  expect(careFigure([], id)).toBe(usual);
  expect(careFigure([set(1), set(3)], id)).toBe(3);
});

test('[CLT-6] a source as a sentence ends with it, and as a chart has it', () => {
  expect(sourceWords(commonPractice)).toMatch(/practice/);
  const practice = { kind: 'common-practice', text: 'hospital pages' } as const;
  expect(sourceWords(practice)).toBe('hospital pages, common practice');
  expect(sourceWords({ ...practice, saysPractice: true })).toBe('hospital pages');
  expect(sourceWords(kdoqi2020())).toBe('KDOQI 2020');
  const graded = { ...kdoqi2020('1C'), secondHand: true, toBeConfirmed: true } as const;
  expect(sourceWords(graded)).toBe('KDOQI 2020 (1C), as quoted, to be confirmed');
  expect(chartSources([graded, kdoqi2020(), graded, practice])).toBe(' (KDOQI 2020, 1C; KDOQI 2020)');
  expect(chartSources([practice, { kind: 'own-rule', text: 'own rule' }])).toBe('');
});
