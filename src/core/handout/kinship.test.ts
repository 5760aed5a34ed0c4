import { expect, test } from 'vitest';
import type { PrintedLabel } from '#core/label/label.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { energyDensity, kinship } from './kinship.ts';

const food = (name: string, printed: Partial<PrintedLabel> = {}) => foodWith(name, printed);
const ham = { statement: 'Ham, water.', referenceAmount: 'deli-meat' } as const;

// Weights: own decision. A version 10, each word 2, the first ingredient 2, the reference amount 1.
test.each([
  ['a word, the first ingredient and the reference amount', food('Honey ham', ham), food('Ham, lower sodium', ham), 5],
  ['two words', food('Smoked turkey breast'), food('Turkey breast'), 4],
  ['a word of three letters', food('Rye'), food('Dark rye'), 2],
  ['a word of two letters is none', food('Ox'), food('Ox'), 0],
  ['a plural is its singular', food('Eggs'), food('Egg'), 2],
  ['but "gas" is no "ga"', food('Gas'), food('Gases'), 0],
  ['how salty it is, and how sold, is no word', food('Lightly salted slices, plain'), food('Unsalted slices, plain'), 0],
  ['letters of any language, any case', food('JAMÓN dulce'), food('jamón'), 2],
  ['the same first ingredient alone', food('Loaf', { statement: 'RICE, salt.' }), food('Cake', { statement: 'Rice, sugar.' }), 2],
  ['another first ingredient', food('Loaf', { statement: 'Rice, oats.' }), food('Cake', { statement: 'Oats, rice.' }), 0],
  ['no statement on either says nothing', food('Loaf'), food('Cake'), 0],
  ['a statement on one alone', food('Loaf', { statement: 'Rice.' }), food('Cake'), 0],
  ['the same reference amount alone', food('Loaf', { referenceAmount: 'bread' }), food('Cake', { referenceAmount: 'bread' }), 1],
  ['another reference amount', food('Loaf', { referenceAmount: 'bread' }), food('Cake', { referenceAmount: 'soup' }), 0],
  ['a reference amount on one alone', food('Loaf', { referenceAmount: 'bread' }), food('Cake'), 0],
] as const)('[HND-6] %s', (_, a, b, near) => {
  expect([kinship(a, b), kinship(b, a)]).toEqual([near, near]);
});

test.each(['loaf', 'Loaf', 'label-1', 'Printed loaf'])(
  '[HND-6] the unsalted version of "%s" is ten nearer, whichever is asked first',
  named => {
    const salted = food('Loaf', { id: 'label-1', name: 'Printed loaf' });
    const version = food('Cake', { unsaltedVersionOf: named });
    expect([kinship(version, salted), kinship(salted, version)]).toEqual([10, 10]);
    expect(kinship(food('Cake', { unsaltedVersionOf: 'Another' }), salted)).toBe(0);
  },
);

// 70 kcal are 65 to 75 kcal (21 CFR 101.9(c)(1)): 75 in 50 g are 150 in 100 g.
test('[HND-6] energy in 100 g by its high end, not known without grams or energy', () => {
  expect(energyDensity(food('Loaf', { panel: { energyKcal: 70 }, serving: { grams: 50 } }))).toBe(150);
  expect(energyDensity(food('Loaf', { panel: { energyKcal: 70 } }))).toBeUndefined();
  expect(energyDensity(food('Loaf', { serving: { grams: 50 } }))).toBeUndefined();
});
