import { describe, expect, test } from 'vitest';
import { foodWith } from '#core/plate/plateFixture.ts';
import type { Test } from '#core/yardstick/yardstick.ts';
import type { SignedTarget } from './handout.ts';
import { draftWith, noPhosphate, slices, sodiumTarget } from './handoutFixture.ts';
import { lineText } from './line.ts';
import {
  additiveLines,
  askedOf,
  boundOf,
  dayLines,
  hasFluidLimit,
  hasSodium,
  hasSodiumLimit,
  mealBounds,
  mealsOf,
  numbersTable,
} from './numbers.ts';
import { inHouseholdMeasure, portionWords, sodiumOf } from './portions.ts';
import { wordsIn } from './words/inLanguage.ts';

const words = wordsIn.en;
const open = Number.POSITIVE_INFINITY;

const target = (
  item: SignedTarget['item'],
  unit: SignedTarget['unit'],
  lo: number,
  hi: number,
  limit?: SignedTarget['limit'],
): SignedTarget => ({ item, unit, range: { lo, hi }, ...(limit === undefined ? {} : { limit }) });

const protein = (lo: number, hi: number, limit?: SignedTarget['limit']) => target('protein', 'g', lo, hi, limit);

function draftOf(targets: readonly SignedTarget[], more: Readonly<Record<string, unknown>> = {}) {
  const json = targets.map(({ range, ...rest }) => ({
    ...rest,
    ...(range === undefined ? {} : { range: { lo: range.lo, hi: range.hi === open ? null : range.hi } }),
  }));
  return draftWith({ prescription: { targets: json, signed: { by: 'A. Writer', on: '2026-11-14' } }, ...more });
}

describe('a target in words', () => {
  // Ends go inward: no handout allows more, or asks for less, than was signed.
  test.each<[SignedTarget, string | undefined]>([
    [protein(73.6, 88.9), '74 to 88 g'],
    [protein(74, 88), '74 to 88 g'],
    [protein(0, 38.9), 'up to 38 g'],
    [protein(0, 38.9, 'at-most'), 'up to 38 g'],
    [protein(5.2, 5.8), '5.2 to 5.8 g'],
    [protein(0, 0.8), 'up to 0.8 g'],
    [protein(0, 0.8, 'below'), 'less than 0.8 g'],
    [protein(0, 60, 'below'), 'less than 60 g'],
    [protein(0, 1), 'up to 1 g'],
    [protein(5.2, open), 'at least 6 g'],
    [protein(5.2, 5.9, 'at-least'), 'at least 5.2 g'],
    [protein(5.2, 8, 'at-least'), 'at least 6 g'],
    [protein(0, open), undefined],
    [protein(0.4, open), 'at least 1 g'],
    // One figure is to aim at, where it is food that is counted; from 10 on in whole units.
    [protein(55.9, 55.9), 'about 56 g'],
    [protein(10.4, 10.4), 'about 10 g'],
    [protein(9.5, 9.5), 'about 9.5 g'],
    [target('energy', 'kcal', 2000, 2000), 'about 2,000 kcal'],
    [protein(56, 56, 'at-most'), 'up to 56 g'],
    // It is the most, where it is sodium, a mineral or fluid.
    [target('sodium', 'mg', 2000, 2000), 'up to 2,000 mg'],
    [target('fluid', 'mL', 1200, 1200), 'up to 1,200 mL (5 cups, or 40 fluid ounces)'],
    [{ item: 'sodium', unit: 'mg' }, undefined],
  ])('[HND-3] %j: %s', (signed, asked) => {
    expect(askedOf(signed, words)).toBe(asked);
  });

  test.each<[Partial<Test>, object | undefined]>([
    [{ atMost: 690.9 }, { kind: 'at-most', figure: '690 mg' }],
    [{ atMost: 1 }, { kind: 'at-most', figure: '1 mg' }],
    [{ atMost: 0.5 }, { kind: 'at-most', figure: '0.5 mg' }],
    [{ below: 300 }, { kind: 'below', figure: '300 mg' }],
    // Under 300.5 is up to 300: "less than 300" would take away what was signed.
    [{ below: 300.5 }, { kind: 'at-most', figure: '300 mg' }],
    [{ below: 0.5 }, { kind: 'below', figure: '0.5 mg' }],
    [{ atLeast: 5 }, undefined],
  ])('[HND-3] a bound %j', (bound, asked) => {
    const [found] = boundOf({
      id: 't',
      measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
      basis: 'on-plate',
      source: { kind: 'clinic', text: '' },
      ...bound,
    });
    expect(found).toEqual(asked);
  });
});

describe('the numbers of a handout', () => {
  const potassium = target('potassium', 'mg', 0, 2500, 'at-most');
  const meals = [
    { name: 'lunch', percent: 40 },
    { name: 'dinner', percent: 60 },
  ];

  test('[HND-3] meals as planned, an even pattern where none are', () => {
    expect(mealsOf({ meals })).toBe(meals);
    expect(mealsOf({ meals: [] }).reduce((sum, { percent }) => sum + percent, 0)).toBe(100);
  });

  test('[HND-3] the table has the day and each meal; a head says how a column is meant where all of it is', () => {
    const [table] = numbersTable(draftOf([sodiumTarget, potassium], { meals }), words);
    expect(table).toMatchObject({
      kind: 'table',
      head: [words.whatColumn, 'Sodium: less than', 'Potassium: up to'],
      rows: [{ cells: ['2,000 mg', '2,500 mg'] }, { cells: ['800 mg', '1,000 mg'] }, { cells: ['1,200 mg', '1,500 mg'] }],
    });
    const uneven = target('sodium', 'mg', 0, 2001, 'below');
    // 40 % of 2001 is 800.4: up to 800.
    expect(numbersTable(draftOf([uneven], { meals }), words)[0]).toMatchObject({
      head: [words.whatColumn, 'Sodium'],
      rows: [{ cells: ['less than 2,001 mg'] }, { cells: ['up to 800 mg'] }, { cells: ['up to 1,200 mg'] }],
    });
    const between = target('sodium', 'mg', 1500, 2000, 'within');
    expect(numbersTable(draftOf([between], { meals }), words)[0]).toMatchObject({
      rows: [{ cells: ['1,500 to 2,000 mg'] }, { cells: ['up to 800 mg'] }, { cells: ['up to 1,200 mg'] }],
    });
    expect(numbersTable(draftOf([noPhosphate], { meals }), words)).toEqual([]);
    expect(mealBounds(draftOf([sodiumTarget]).prescription!, 30).get('sodium')).toEqual({
      kind: 'below',
      figure: '600 mg',
    });
  });

  test('[HND-3] what is met over a day has a line, and so has a mineral without a most', () => {
    const floor = target('potassium', 'mg', 3000, open, 'at-least');
    const lines = (only?: readonly SignedTarget['item'][]) =>
      dayLines(draftOf([sodiumTarget, floor, protein(73.6, 88.9)]), words, only).map(lineText);
    expect(lines()).toEqual(['Potassium: at least 3,000 mg a day.', 'Protein: 74 to 88 g a day.']);
    expect(lines(['fluid'])).toEqual(['Potassium: at least 3,000 mg a day.']);
  });

  test('[HND-3] whether sodium and fluid are bounded', () => {
    const floor = target('sodium', 'mg', 1500, open, 'at-least');
    expect([sodiumTarget, floor, noPhosphate].map(one => hasSodium(draftOf([one])))).toEqual([true, true, false]);
    expect([sodiumTarget, floor, noPhosphate].map(one => hasSodiumLimit(draftOf([one])))).toEqual([true, false, false]);
    const fluid = (hi: number) =>
      hasFluidLimit(draftOf([target('fluid', 'mL', 500, hi, hi === open ? 'at-least' : 'at-most')]).prescription!);
    expect([fluid(1000), fluid(open), hasFluidLimit(draftOf([sodiumTarget]).prescription!)]).toEqual([true, false, false]);
  });

  test('[HND-5] additives are told where the prescription wants none of them', () => {
    const told = (...targets: SignedTarget[]) => additiveLines(draftOf(targets), words).map(lineText);
    const noPotassium: SignedTarget = { ...noPhosphate, item: 'potassiumAdditives' };
    expect(told(sodiumTarget)).toEqual([]);
    expect(told(noPhosphate)).toEqual(['Phosphate additives: none named on the label.']);
    expect(told(noPotassium, noPhosphate)).toHaveLength(2);
  });
});

describe('a portion in words', () => {
  test('[HND-2] in the label’s own measure with grams or milliliters beside it', () => {
    const drink = foodWith('Drink', { serving: { household: '1 cup', milliliters: 240 } });
    expect(portionWords(words, slices('Ham', 100), { servings: 0.5 })).toBe('2 slices (28 g)');
    expect(portionWords(words, drink, { servings: 2 })).toBe('2 cups (480 mL)');
    expect(portionWords(words, drink, { milliliters: 100 })).toBe('100 mL');
    expect(portionWords(words, slices('Ham', 100), { grams: 28 })).toBe('28 g');
    expect(portionWords(words, foodWith('Bare', {}), { servings: 1 })).toBe('1 serving');
    // A panel per 100 g of 4 slices (56 g): 7.14 slices are what the amounts are for.
    const eu = foodWith('EU ham', { market: 'eu', basis: 'per-100-g', serving: { household: '4 slices', grams: 56 } });
    expect(inHouseholdMeasure(eu, { servings: 1 })).toEqual({ measure: 'slice', count: expect.closeTo(4, 9) });
  });

  test('[HND-3] its sodium: a figure, a range outward, no known end, not known', () => {
    const told = (sodiumMg: string | number | undefined, servings = 1) =>
      sodiumOf(words, foodWith('Food', { panel: sodiumMg === undefined ? {} : { sodiumMg } }), { servings });
    expect(told(180)).toBe('180 mg');
    expect(told(1180)).toBe('1,180 mg');
    // 6 % of 2300 mg is 126.5 to 149.5 mg.
    expect(told('6%')).toBe('126 to 150 mg');
    expect(told(undefined)).toBeUndefined();
  });
});
